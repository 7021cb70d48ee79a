package org.demebook.planning;

import java.time.LocalDate;

/**
 * That a female had a litter not long ago, on the day of a pairing.
 *
 * @param pairFrom the first day on which she has surely rested, or would have if she bore on the first day that she can have
 * @param sure whether she has not rested for sure; else she may have, and nobody knows better
 * @param told whether the asker may know when she bore, and not only have it computed with
 */
record Rest(LocalDate pairFrom, boolean sure, boolean told) {
    String words(int daysBetweenLitters) {
        return told
                ? "rests: her last litter is less than %d days before the next could be born; pair her from %s on"
                        .formatted(daysBetweenLitters, pairFrom)
                : "rests after a litter";
    }
}
