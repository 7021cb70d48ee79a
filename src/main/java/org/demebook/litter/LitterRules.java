package org.demebook.litter;

import static org.demebook.problem.ProblemType.LITTER_DOES_NOT_ADD_UP;
import static org.demebook.problem.ProblemType.LITTER_TOO_SOON;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.gestation.Grade;
import org.demebook.keeper.Standing;
import org.demebook.notation.RoughDate;
import org.demebook.problem.Rule;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.Offspring;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/** What a litter breaks or strains of the rules of its taxon, beside those that hold for every animal and its parents. */
@ApplicationScoped
class LitterRules {
    /** Young of one litter are born within so many days (common practice, no source). */
    private static final int DAYS_OF_ONE_BIRTH = 5;

    @Inject
    Offspring offspring;

    /**
     * @param damIds every record of the dam
     * @param litterId of the litter itself, which may be registered already
     */
    List<Breach> check(
            Standing by,
            UUID litterId,
            Custody dam,
            Set<UUID> damIds,
            RoughDate born,
            Outcome outcome,
            TaxonProfile profile) {
        var breaches = new ArrayList<Breach>();
        for (var other : Litter.ofDam(by.populationId(), damIds)) {
            if (!other.id.equals(litterId)) {
                checkDistance(dam, born, other, profile.breeding(), breaches);
            }
        }
        checkBornOutside(by, dam, damIds, born, outcome, profile, breaches);
        checkSize(outcome, profile.litter(), breaches);
        return breaches;
    }

    /** Two litters of one dam that are certainly closer than her taxon's figures allow. */
    private static void checkDistance(
            Custody dam, RoughDate born, Litter other, TaxonProfile.Breeding breeding, List<Breach> breaches) {
        var mostDays = mostDaysBetween(born, other.born);
        if (mostDays == null || mostDays >= breeding.daysBetweenLittersUsual()) {
            return;
        }
        var fact = "%s has a litter of %s already (%s, %d live-born); one of %s would be at most %d days from it"
                .formatted(dam.number(), other.born, other.id, other.outcome.liveBorn(), born, mostDays);
        if (mostDays < breeding.daysBetweenLitters()) {
            breaches.add(Breach.block(
                    LITTER_TOO_SOON,
                    Rule.LITTERS_TOO_CLOSE,
                    "born",
                    born,
                    "%s, and two litters of one dam are at least %d days apart. Is it the same litter, or another dam?"
                            .formatted(fact, breeding.daysBetweenLitters()),
                    mostDays <= DAYS_OF_ONE_BIRTH
                            ? "Likelier one litter that is recorded twice: the days are almost the same."
                            : null));
        } else {
            breaches.add(Breach.warning(
                    Rule.LITTERS_CLOSE,
                    "born",
                    born,
                    "%s; females usually rest at least %d days. Is the day right, and the dam?"
                            .formatted(fact, breeding.daysBetweenLittersUsual()),
                    null));
        }
    }

    /** Young of hers in the register that no litter brought: of this birth, or of one too close to it. */
    private void checkBornOutside(
            Standing by,
            Custody dam,
            Set<UUID> damIds,
            RoughDate born,
            Outcome outcome,
            TaxonProfile profile,
            List<Breach> breaches) {
        var sameBirth = new ArrayList<String>();
        var apart = new ArrayList<String>();
        for (var young : offspring.bornOutsideLitters(by.populationId(), damIds)) {
            var mostDays = young.born() == null ? null : mostDaysBetween(born, young.born());
            if (mostDays != null && mostDays <= DAYS_OF_ONE_BIRTH) {
                sameBirth.add(young.number());
            } else if (mostDays != null && mostDays < profile.breeding().daysBetweenLitters()) {
                apart.add("%s of %s".formatted(young.number(), young.born()));
            }
        }
        if (!sameBirth.isEmpty()) {
            breaches.add(bornThen(dam, outcome, sameBirth));
        }
        if (!apart.isEmpty()) {
            breaches.add(Breach.warning(
                    Rule.LITTERMATES_BORN_APART,
                    "born",
                    born,
                    "%s are young of %s too, more than %d days from this birth and too close for another litter; which day is right?"
                            .formatted(String.join(", ", apart), dam.number(), DAYS_OF_ONE_BIRTH),
                    null));
        }
    }

    private static Breach bornThen(Custody dam, Outcome outcome, List<String> numbers) {
        int registered = outcome.liveBorn() + numbers.size();
        int formed = outcome.ovaFound() - outcome.unfertilised();
        var fact = "%s stand in the register as young of %s born then; with them the litter has %d young"
                .formatted(String.join(", ", numbers), dam.number(), registered);
        var likelier =
                "Likelier counted twice: an animal that was registered before its litter is among the live-born too.";
        return registered > formed
                ? Breach.block(
                        LITTER_DOES_NOT_ADD_UP,
                        Rule.MORE_YOUNG_THAN_FOUND,
                        "liveBorn",
                        outcome.liveBorn(),
                        "%s, but only %d formed ones were found. Leave those out of this litter, or take their records back."
                                .formatted(fact, formed),
                        likelier)
                : Breach.warning(
                        Rule.MORE_YOUNG_THAN_LIVE_BORN,
                        "liveBorn",
                        outcome.liveBorn(),
                        "%s, but %d live-born. Are they counted here once more?".formatted(fact, outcome.liveBorn()),
                        likelier);
    }

    static Breach lastMetLongAgo(String sire, String dam, Mate mate) {
        return Breach.warning(
                Rule.STORED_SPERM,
                "sire",
                sire,
                "%s was last with %s on %s, %d days before the conception: %s. Take this sire with low confidence; a DNA test is advised."
                        .formatted(
                                sire,
                                dam,
                                mate.lastMetOn(),
                                mate.daysBeforeConception(),
                                mate.grade() == Grade.RARE
                                        ? "sperm stored so long is known, but rare"
                                        : "beyond every published case of stored sperm"),
                "The sire, if another male could have met the dam since.");
    }

    private static void checkSize(Outcome outcome, TaxonProfile.UsualLitter usual, List<Breach> breaches) {
        int found = outcome.ovaFound();
        if (found > usual.ovaAtMost()) {
            breaches.add(Breach.notice(
                    Rule.LITTER_SIZE_UNUSUAL,
                    "ovaFound",
                    found,
                    "%d ova are more than a litter of this taxon usually has (%d to %d); check the count."
                            .formatted(found, usual.ovaAtLeast(), usual.ovaAtMost()),
                    null));
        } else if (found < usual.ovaAtLeast()) {
            breaches.add(Breach.notice(
                    Rule.LITTER_SIZE_UNUSUAL,
                    "ovaFound",
                    found,
                    "%d ova are fewer than a litter of this taxon usually has (%d to %d); were slugs thrown away uncounted?"
                            .formatted(found, usual.ovaAtLeast(), usual.ovaAtMost()),
                    null));
        }
    }

    /** Null where a date is open to one side. */
    private static @Nullable Long mostDaysBetween(RoughDate one, RoughDate other) {
        if (one.earliest() == null || one.latest() == null || other.earliest() == null || other.latest() == null) {
            return null;
        }
        return Math.max(
                Math.abs(ChronoUnit.DAYS.between(one.earliest(), other.latest())),
                Math.abs(ChronoUnit.DAYS.between(other.earliest(), one.latest())));
    }
}
