package org.demebook.planning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.ancestry.Snapshot;
import org.demebook.kinship.Pedigree;
import org.demebook.litter.BirthDays.BirthDay;
import org.demebook.notation.Sex;
import org.demebook.taxon.BirthMode;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/**
 * Which females rest. What is counted is the time from one birth to the next, {@code breeding.daysBetweenLittersUsual}, and not
 * from the birth to the pairing: young that she conceives on the day of the pairing are born after as many days as the profile
 * has from ovulation to birth, of egg-layers from laying to hatching, so that she may be paired as much earlier. A female may
 * conceive later than she was paired, never earlier: no litter comes sooner than this says.
 *
 * @param daysBetween usual from birth to birth
 * @param daysToBirth from the pairing, at the earliest
 */
record Resting(Snapshot snapshot, LocalDate pairOn, LocalDate today, int daysBetween, int daysToBirth) {

    /** A birth, in row terms. */
    private record Birth(
            int dam, @Nullable LocalDate earliest, @Nullable LocalDate latest, boolean told) {}

    /** @param told whether the asker may read it, and not only have it computed with */
    record Known(BirthDay birth, boolean told) {}

    static Resting of(Snapshot snapshot, LocalDate pairOn, LocalDate today, TaxonProfile profile, BirthMode birthMode) {
        return new Resting(
                snapshot,
                pairOn,
                today,
                profile.breeding().daysBetweenLittersUsual(),
                birthMode == BirthMode.EGG_LAYING
                        ? profile.gestation().daysFromLayingToHatching()
                        : profile.gestation().daysFromOvulationToBirth());
    }

    /**
     * By row; who has rested is not there. O(population).
     *
     * @param litters that the asker may know of, or have computed with; young tell of a birth wherever the asker sees whose they are
     */
    Map<Integer, Rest> females(List<Known> litters) {
        var births = new ArrayList<Birth>();
        for (int row = 0; row < snapshot.size(); row++) {
            int dam = snapshot.isShown(row) ? snapshot.shownDam(row) : Pedigree.UNKNOWN;
            if (dam != Pedigree.UNKNOWN) {
                births.add(new Birth(dam, snapshot.bornEarliest(row), snapshot.bornLatest(row), true));
            }
        }
        for (var litter : litters) {
            var birth = litter.birth();
            int dam = snapshot.row(birth.damId());
            if (dam != Pedigree.UNKNOWN) {
                births.add(new Birth(dam, birth.earliest(), birth.latest(), litter.told()));
            }
        }
        var resting = new HashMap<Integer, Rest>();
        for (var birth : births) {
            var rest = rest(birth);
            if (rest != null && snapshot.alive(birth.dam()) && snapshot.sex(birth.dam()) == Sex.FEMALE) {
                resting.merge(birth.dam(), rest, Resting::stricter);
            }
        }
        return resting;
    }

    private @Nullable Rest rest(Birth birth) {
        var earliest = birth.earliest();
        var latest = birth.latest() == null || birth.latest().isAfter(today) ? today : birth.latest();
        if (earliest != null && pairFrom(earliest).isAfter(pairOn)) {
            return new Rest(pairFrom(earliest), true, birth.told());
        }
        return birth.told()
                        && (birth.earliest() != null || birth.latest() != null)
                        && pairFrom(latest).isAfter(pairOn)
                ? new Rest(pairFrom(latest), false, true)
                : null;
    }

    private LocalDate pairFrom(LocalDate born) {
        return born.plusDays(Math.max(0, daysBetween - daysToBirth));
    }

    /** What is sure goes before what may be, then the later; of the same day what may be told. */
    private static Rest stricter(Rest one, Rest other) {
        return Comparator.comparing(Rest::sure)
                                .thenComparing(Rest::pairFrom)
                                .thenComparing(Rest::told)
                                .compare(one, other)
                        >= 0
                ? one
                : other;
    }
}
