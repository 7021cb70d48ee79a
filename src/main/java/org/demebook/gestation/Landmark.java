package org.demebook.gestation;

import java.time.LocalDate;
import org.demebook.taxon.TaxonProfile.Gestation;

/** A breeding sign from which the days to the birth or the hatching are counted. */
public enum Landmark {
    /** To the birth; the surest of the signs of a live-bearer. */
    POST_OVULATION_SHED("shed", "birth"),
    /**
     * To the birth. Less sure than the shed for two reasons, both common practice without a source: the shed follows within
     * two to three weeks, and the swelling is noticed within a week.
     */
    OVULATION("ovulation", "birth"),
    /** To the hatching. */
    LAYING("laying", "hatching");

    private static final double DAYS_OF_DOUBT_TO_SHED = 7;
    private static final double DAYS_OF_DOUBT_IN_SWELLING = 7;

    private final String word;
    private final String end;

    Landmark(String word, String end) {
        this.word = word;
        this.end = end;
    }

    /** In a sentence: the shed, the ovulation, the laying. */
    public String word() {
        return word;
    }

    /** What is awaited, in a sentence. */
    public String end() {
        return end;
    }

    /**
     * A landmark as it was noted.
     *
     * @param on the day, as noted
     */
    public record Noted(Landmark landmark, LocalDate on, HowKnown howKnown) {
        /** Variance, in days², of the way from this landmark to the shed (or the laying) from which spreads are told. */
        public double variance() {
            return howKnown.variance()
                    + (landmark == OVULATION
                            ? HowKnown.ofSpan(DAYS_OF_DOUBT_TO_SHED) + HowKnown.ofSpan(DAYS_OF_DOUBT_IN_SWELLING)
                            : 0);
        }
    }

    /** Whether days from here and from there can be told in each other. */
    boolean sameScale(Landmark other) {
        return (this == LAYING) == (other == LAYING);
    }

    /** How many days earlier than the shed this landmark is, by the profile; 0 for the shed and for the laying. */
    int daysAhead(Gestation profile) {
        return this == OVULATION ? profile.daysFromOvulationToBirth() - profile.daysFromShedToBirth() : 0;
    }

    /** The usual number of days from the shed to the birth, or from the laying to the hatching. */
    int usualDays(Gestation profile) {
        return this == LAYING ? profile.daysFromLayingToHatching() : profile.daysFromShedToBirth();
    }
}
