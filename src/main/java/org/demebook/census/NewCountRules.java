package org.demebook.census;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;

/**
 * Parameters of disclosure control to be used from now on.
 *
 * @param fewestKeepers how many keepers have to stand behind a count; 3 is usual, more seldom makes sense
 * @param percent p of the p % rule: no keeper may be able to estimate another's part of a count more closely; 20 is usual
 */
public record NewCountRules(
        @Min(3) @Max(10) int fewestKeepers,
        @Min(1) @Max(100) int percent) {}
