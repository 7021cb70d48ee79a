package org.demebook.diary;

import jakarta.validation.constraints.NotNull;
import java.time.LocalDate;

/** @param on the day on which it was over */
public record StatedEnd(@NotNull LocalDate on) {}
