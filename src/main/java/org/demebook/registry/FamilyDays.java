package org.demebook.registry;

import static org.demebook.problem.ProblemType.BORN_BEFORE_PARENT;
import static org.demebook.problem.ProblemType.DAM_DIED_BEFORE_BIRTH;
import static org.demebook.problem.ProblemType.DAM_TOO_YOUNG;
import static org.demebook.problem.ProblemType.DIED_BEFORE_BIRTH;
import static org.demebook.problem.ProblemType.SIRE_TOO_YOUNG;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.demebook.gestation.Grade;
import org.demebook.notation.RoughDate;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Rule;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/**
 * The days of an animal's birth and death beside those of its parents.
 *
 * <p>Dates are as precise as they are known: only what is certain breaks a rule. That a snake's sire may have died
 * before the conception is stored sperm (Levine, Schuett &amp; Booth 2021, PLoS ONE 16: e0252049); it is told of, never
 * refused.
 */
final class FamilyDays {
    /** Common practice, no source. */
    private static final int YEARS_OF_BREEDING = 25;

    private static final double DAYS_OF_A_MONTH = 365.25 / 12;

    private final TaxonProfile profile;
    private final DateRules dates;

    FamilyDays(TaxonProfile profile, DateRules dates) {
        this.profile = profile;
        this.dates = dates;
    }

    /** Everything about days that is wrong or strained. */
    List<Breach> check(Kin young, @Nullable Kin dam, List<Kin> sires) {
        var breaches = days(young, dam, sires);
        swapped(young, dam, sires, breaches.size()).ifPresent(breaches::add);
        return breaches;
    }

    private List<Breach> days(Kin young, @Nullable Kin dam, List<Kin> sires) {
        var breaches = new ArrayList<Breach>();
        if (young.born() != null && young.died() != null && young.died().surelyBefore(young.born())) {
            breaches.add(Breach.error(
                    DIED_BEFORE_BIRTH,
                    Rule.DIED_BEFORE_BIRTH,
                    "died",
                    young.died(),
                    "%s was born on %s and cannot have died on %s; correct one of the two."
                            .formatted(young.label(), young.born(), young.died()),
                    null));
        }
        if (young.born() == null) {
            return breaches;
        }
        if (dam != null) {
            checkAge(young, dam, "dam", DAM_TOO_YOUNG, Rule.DAM_TOO_YOUNG, breaches);
            checkDamLived(young, dam, breaches);
        }
        for (var sire : sires) {
            checkAge(young, sire, "sire", SIRE_TOO_YOUNG, Rule.SIRE_TOO_YOUNG, breaches);
            checkSireLived(young, sire, breaches);
        }
        return breaches;
    }

    private static void checkDamLived(Kin young, Kin dam, List<Breach> breaches) {
        if (dam.died() == null || young.born() == null || !dam.died().surelyBefore(young.born())) {
            return;
        }
        var facts = "%s died on %s, %s was born on %s".formatted(dam.label(), dam.died(), young.label(), young.born());
        if (young.removedFromDeadDam()) {
            breaches.add(Breach.notice(
                    Rule.DAM_DIED_BEFORE_BIRTH,
                    "dam",
                    dam.label(),
                    facts + ", removed from the dead dam. Nothing is to be done.",
                    null));
        } else {
            breaches.add(Breach.block(
                    DAM_DIED_BEFORE_BIRTH,
                    Rule.DAM_DIED_BEFORE_BIRTH,
                    "dam",
                    dam.label(),
                    facts
                            + ": a dam lives at the birth. Correct one of the two dates, or the dam; if it was taken from the dead dam, say so (removedFromDeadDam).",
                    lessPrecise(dam.label() + "'s death", dam.died(), "the birth", young.born())));
        }
    }

    /** A sire that was dead is warned of, in words graded by how long sperm would have been stored; never refused. */
    private void checkSireLived(Kin young, Kin sire, List<Breach> breaches) {
        var diedLatest = sire.died() == null ? null : sire.died().latest();
        var bornEarliest = young.born() == null ? null : young.born().earliest();
        if (diedLatest == null || bornEarliest == null) {
            return;
        }
        var conceived = bornEarliest.minusDays(profile.gestation().daysFromOvulationToBirth());
        long days = ChronoUnit.DAYS.between(diedLatest, conceived);
        var facts = "%s was conceived about %s, %d days after the death of %s on %s: "
                .formatted(young.label(), conceived, days, sire.label(), sire.died());
        var known = monthsAndDays(profile.breeding().daysOfSpermStorage());
        switch (Grade.of(days, profile.breeding())) {
            case IN_TIME -> {}
            case STORED_SPERM ->
                breaches.add(Breach.warning(
                        Rule.STORED_SPERM,
                        "sire",
                        sire.label(),
                        facts + "stored sperm is known up to %s; a DNA test is advised.".formatted(known),
                        null));
            case RARE ->
                breaches.add(Breach.warning(
                        Rule.STORED_SPERM,
                        "sire",
                        sire.label(),
                        facts
                                + "stored sperm is known up to %s, but so long is rare. Take this sire with low confidence; a DNA test is advised."
                                        .formatted(known),
                        "The sire, if another male could have met the dam since."));
            case BEYOND ->
                breaches.add(Breach.warning(
                        Rule.STORED_SPERM,
                        "sire",
                        sire.label(),
                        facts
                                + "that is beyond every published case (%s). Consider another male, or none; have it tested before you plan with it."
                                        .formatted(known),
                        "The sire: no stored sperm is known to have lived so long."));
        }
    }

    private static String monthsAndDays(int days) {
        return "%d months (%d days)".formatted(Math.round(days / DAYS_OF_A_MONTH), days);
    }

    private void checkAge(
            Kin young, Kin parent, String role, ProblemType tooYoung, Rule tooYoungRule, List<Breach> breaches) {
        if (parent.born() == null || young.born() == null) {
            return;
        }
        checkOld(young, parent, role, breaches);
        var parentEarliest = parent.born().earliest();
        var youngLatest = young.born().latest();
        if (parentEarliest == null || youngLatest == null) {
            return;
        }
        long mostDays = ChronoUnit.DAYS.between(parentEarliest, youngLatest);
        var breeding = profile.breeding();
        var likelier = lessPrecise(parent.label() + "'s birth", parent.born(), "the young's birth", young.born());
        if (mostDays <= 0) {
            breaches.add(Breach.block(
                    BORN_BEFORE_PARENT,
                    Rule.BORN_BEFORE_PARENT,
                    role,
                    parent.label(),
                    "%s was born on %s, its %s %s on %s: a parent is born first. Correct one of the two dates, or the %s."
                            .formatted(young.label(), young.born(), role, parent.label(), parent.born(), role),
                    likelier));
        } else if (mostDays < breeding.daysOfAgeAtFirstBirth()) {
            breaches.add(Breach.block(
                    tooYoung,
                    tooYoungRule,
                    role,
                    parent.label(),
                    "%s, born on %s, was at most %d days old when %s was born on %s; a %s of this taxon is at least %d. Correct one of the two dates, or the %s."
                            .formatted(
                                    parent.label(),
                                    parent.born(),
                                    mostDays,
                                    young.label(),
                                    young.born(),
                                    role,
                                    breeding.daysOfAgeAtFirstBirth(),
                                    role),
                    likelier));
        } else if (role.equals("dam") && mostDays < breeding.daysOfAgeAtFirstBirthUsual()) {
            breaches.add(Breach.warning(
                    Rule.DAM_YOUNG,
                    role,
                    parent.label(),
                    "%s, born on %s, was at most %d days old when %s was born on %s; few females of this taxon give birth before %d. Check the two dates."
                            .formatted(
                                    parent.label(),
                                    parent.born(),
                                    mostDays,
                                    young.label(),
                                    young.born(),
                                    breeding.daysOfAgeAtFirstBirthUsual()),
                    likelier));
        }
    }

    private static void checkOld(Kin young, Kin parent, String role, List<Breach> breaches) {
        var parentLatest = parent.born() == null ? null : parent.born().latest();
        var youngEarliest = young.born() == null ? null : young.born().earliest();
        if (parentLatest != null
                && youngEarliest != null
                && youngEarliest.isAfter(parentLatest.plusYears(YEARS_OF_BREEDING))) {
            breaches.add(Breach.warning(
                    Rule.PARENT_OLD,
                    role,
                    parent.label(),
                    "%s, born on %s, was at least %d years old when %s was born on %s; few breed after %d. Check the two dates, and whether the number is another animal's."
                            .formatted(
                                    parent.label(),
                                    parent.born(),
                                    ChronoUnit.YEARS.between(parentLatest, youngEarliest),
                                    young.label(),
                                    young.born(),
                                    YEARS_OF_BREEDING),
                    lessPrecise(parent.label() + "'s birth", parent.born(), "the young's birth", young.born())));
        }
    }

    /** Day and month of the birth, or of the death, the other way round would break less, and nothing else. */
    private Optional<Breach> swapped(Kin young, @Nullable Kin dam, List<Kin> sires, int broken) {
        if (broken == 0) {
            return Optional.empty();
        }
        var born = dates.swapped(young.born())
                .filter(other ->
                        days(with(young, other, young.died()), dam, sires).size() < broken)
                .map(other -> swapped(young, "born", young.born(), other));
        return born.isPresent()
                ? born
                : dates.swapped(young.died())
                        .filter(other -> days(with(young, young.born(), other), dam, sires)
                                        .size()
                                < broken)
                        .map(other -> swapped(young, "died", young.died(), other));
    }

    private static Breach swapped(Kin young, String field, @Nullable RoughDate written, RoughDate other) {
        return Breach.warning(
                Rule.DAY_MONTH_SWAPPED,
                field,
                written,
                "%s: day and month of %s may be swapped; with %s less would be wrong. Look at the paper again."
                        .formatted(young.label(), written, other),
                "The date %s.".formatted(written));
    }

    private static Kin with(Kin young, @Nullable RoughDate born, @Nullable RoughDate died) {
        return new Kin(young.label(), young.sex(), born, died, young.sexDetermination(), young.removedFromDeadDam());
    }

    /** Of two dates that do not agree, the one that is known less well; null when they are known alike. */
    private static @Nullable String lessPrecise(String oneName, RoughDate one, String otherName, RoughDate other) {
        if (one.day().isPresent() == other.day().isPresent()) {
            return null;
        }
        return one.day().isPresent()
                ? "%s: it is not known to the day (%s).".formatted(capital(otherName), other)
                : "%s: it is not known to the day (%s).".formatted(capital(oneName), one);
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
