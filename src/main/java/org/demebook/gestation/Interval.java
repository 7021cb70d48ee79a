package org.demebook.gestation;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.UUID;
import org.demebook.taxon.TaxonProfile.Gestation;

/**
 * The days from a landmark to the birth or hatching of one litter, as they were recorded.
 *
 * @param damId whose litter
 */
public record Interval(UUID damId, Landmark.Noted from, LocalDate bornOn) {
    public long days() {
        return ChronoUnit.DAYS.between(from.on(), bornOn);
    }

    /** Told from the shed, or from the laying. */
    double daysFromShed(Gestation profile) {
        return days() - from.landmark().daysAhead(profile);
    }

    /** Half as long or one and a half times as long as usual: rather a sign of another cycle than a gestation. */
    public boolean credible(Gestation profile) {
        double days = daysFromShed(profile);
        double usual = from.landmark().usualDays(profile);
        return days >= usual / 2 && days <= usual * 3 / 2;
    }
}
