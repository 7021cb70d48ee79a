package org.demebook.reading;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/**
 * One kind of loss in a litter, against the litters that it is compared with.
 *
 * @param found so many were lost
 * @param of out of so many
 * @param usualShare mean share that is lost in the litters compared with, 0 to 1
 * @param overdispersion how far litters differ: correlation of two ova of one litter, 0 (not at all) to 1
 * @param probability that chance alone brings as many or more, 0 to 1
 * @param verdict unusual where the probability is below the limit of its kind, never for a single one
 */
public record LossReading(
        Loss loss,
        int found,
        int of,
        double usualShare,
        double overdispersion,
        double probability,
        Verdict verdict,
        String sentence) {
    /**
     * What is counted, and among what. Of ordinary litters at most two in a hundred are called unusual for any of the three
     * ({@code CalibrationTest}); most of that chance is spent on the dead, of which a keeper should hear first.
     */
    public enum Loss {
        /** Slugs among the ova found. */
        UNFERTILISED("slugs", 0.005),
        /** Stillborn and part-developed among the ova that were formed. */
        DEAD_IN_SAC_OR_AT_BIRTH("stillborn or part-developed", 0.015),
        /** Malformed among the full-term, alive or dead. */
        MALFORMED("malformed", 0.005);

        private final String trade;
        private final double unusualBelow;

        Loss(String trade, double unusualBelow) {
            this.trade = trade;
            this.unusualBelow = unusualBelow;
        }

        /** The probability below which such a loss is called unusual beside other litters of the population. */
        double unusualBelow() {
            return unusualBelow;
        }

        /** What keepers call them. */
        String trade() {
            return trade;
        }

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public enum Verdict {
        WITHIN_CHANCE,
        UNUSUAL;

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
