package org.demebook.leaving;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * @param name your own sign-in name, typed once more: an erasure cannot be taken back
 */
public record NewErasure(@NotNull @Size(min = 1, max = 100) String name) {}
