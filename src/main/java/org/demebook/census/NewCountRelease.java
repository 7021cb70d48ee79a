package org.demebook.census;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Counts to be released.
 *
 * @param countedOn on which day the animals are counted; today when nothing is said
 */
public record NewCountRelease(@Nullable LocalDate countedOn) {}
