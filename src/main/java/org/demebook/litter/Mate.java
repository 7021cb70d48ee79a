package org.demebook.litter;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;

/**
 * A male that a female met before she gave birth.
 *
 * @param lastMetOn the last day on which the pair could have met
 * @param daysBeforeConception from that day to the conception; 0 or less when they were together then
 * @param grade {@code in time}, {@code stored sperm}, {@code rare} or {@code beyond every published case}
 * @param share of the chance to be the sire, 0 to 1
 */
public record Mate(UUID maleId, LocalDate lastMetOn, int daysBeforeConception, String grade, BigDecimal share) {
    public static final String BEYOND_EVERY_PUBLISHED_CASE = "beyond every published case";
}
