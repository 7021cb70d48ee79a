package org.demebook.gestation;

import java.time.LocalDate;
import java.util.Objects;
import org.demebook.notation.RoughDate;
import org.demebook.taxon.TaxonProfile.Gestation;
import org.jspecify.annotations.Nullable;

/**
 * When a litter was conceived: at the ovulation, or, when that was not seen, the usual number of days before the birth.
 *
 * @param earliestOn first day that it can have been; with {@code latestOn} one day when ovulation or birth is known to the day
 * @param latestOn last day of the same
 * @param lastPossibleOn a male whom she met only after this day is not the sire: by a birth as early as any that was seen
 */
public record Conception(LocalDate earliestOn, LocalDate latestOn, LocalDate lastPossibleOn) {
    /** An ovulation that is guessed may be so many days off. */
    private static final int GUESSED_DAYS = 14;

    /** @param ovulation of that cycle; null when it was not noted */
    public static Conception of(RoughDate born, Landmark.@Nullable Noted ovulation, Gestation profile) {
        if (ovulation != null) {
            int doubt = ovulation.howKnown() == HowKnown.GUESSED ? GUESSED_DAYS : 0;
            return new Conception(ovulation.on(), ovulation.on(), ovulation.on().plusDays(doubt));
        }
        var first = Objects.requireNonNull(born.earliest() == null ? born.latest() : born.earliest());
        var last = born.latest() == null ? first : born.latest();
        int usual = profile.daysFromOvulationToBirth();
        int fewest = profile.daysFromShedToBirthEarliest() + Landmark.OVULATION.daysAhead(profile);
        return new Conception(first.minusDays(usual), last.minusDays(usual), last.minusDays(fewest));
    }
}
