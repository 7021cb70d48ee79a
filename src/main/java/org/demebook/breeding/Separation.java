package org.demebook.breeding;

import jakarta.validation.constraints.NotNull;
import java.time.LocalDate;

/** The end of an introduction. */
public record Separation(@NotNull LocalDate untilOn) {}
