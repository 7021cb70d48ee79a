package org.demebook.litter;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.demebook.gestation.Grade;

/**
 * A male that a female met before she gave birth.
 *
 * @param lastMetOn the last day on which the pair could have met
 * @param daysBeforeConception from that day to the conception; 0 or less when they were together then
 * @param share of the chance to be the sire, 0 to 1
 */
public record Mate(UUID maleId, LocalDate lastMetOn, int daysBeforeConception, Grade grade, BigDecimal share) {}
