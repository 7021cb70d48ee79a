package org.demebook.gestation;

import java.time.LocalDate;
import java.util.UUID;

/**
 * A time in which a female and a male could mate.
 *
 * @param untilOn last day on which they could: of separation, sale or death; of one that goes on, today
 * @param copulationSeen whether they were seen to mate in that time
 */
public record Meeting(UUID maleId, LocalDate fromOn, LocalDate untilOn, boolean copulationSeen) {}
