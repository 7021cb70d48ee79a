package org.demebook.registry;

import static org.demebook.problem.ProblemType.BORN_BEFORE_PARENT;
import static org.demebook.problem.ProblemType.CONTRADICTORY_PARENTAGE;
import static org.demebook.problem.ProblemType.DAM_DIED_BEFORE_BIRTH;
import static org.demebook.problem.ProblemType.DAM_NOT_FEMALE;
import static org.demebook.problem.ProblemType.DAM_TOO_YOUNG;
import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;
import static org.demebook.problem.ProblemType.DIED_BEFORE_BIRTH;
import static org.demebook.problem.ProblemType.FOUNDER_WITH_PARENTS;
import static org.demebook.problem.ProblemType.SIRE_NOT_MALE;
import static org.demebook.problem.ProblemType.SIRE_TOO_YOUNG;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Rule;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/**
 * What must hold between an animal and its parents, for one that is registered, corrected or imported alike.
 *
 * <p>Dates are as precise as they are known: only what is certain breaks a rule. That a snake's sire may have died
 * before the birth is stored sperm (Levine, Schuett &amp; Booth 2021, PLoS ONE 16: e0252049); it is warned of, never
 * refused.
 */
public final class ParentageRules {
    private final TaxonProfile profile;

    public ParentageRules(TaxonProfile profile) {
        this.profile = profile;
    }

    /**
     * A day that has not come yet.
     *
     * @param date null when unknown
     */
    public static Optional<Breach> checkPast(String field, @Nullable RoughDate date, LocalDate today) {
        var earliest = date == null ? null : date.earliest();
        // a day of grace: it may be tomorrow already where the keeper lives
        if (earliest == null || !earliest.isAfter(today.plusDays(1))) {
            return Optional.empty();
        }
        return Optional.of(
                Breach.error(DATE_IN_FUTURE, field, date, "%s lies in the future; check the year.".formatted(date)));
    }

    /** Young without a sire that have no dam either. */
    public static Optional<Breach> checkSireless(boolean damKnown) {
        return damKnown
                ? Optional.empty()
                : Optional.of(Breach.error(
                        CONTRADICTORY_PARENTAGE, "dam", null, "Young without a sire have a dam; say which."));
    }

    /** Candidate sires that are named twice, or whose probabilities sum to more than 1. */
    public static List<Breach> checkCandidates(String field, List<String> labels, List<BigDecimal> probabilities) {
        var breaches = new ArrayList<Breach>();
        var seen = new HashSet<String>();
        for (var label : labels) {
            if (!seen.add(label)) {
                breaches.add(Breach.error(
                        CONTRADICTORY_PARENTAGE,
                        field,
                        label,
                        "%s stands twice among the candidates; name each male once.".formatted(label)));
            }
        }
        for (var probability : probabilities) {
            // what the register holds has eight decimals
            if (probability.signum() > 0
                    && probability.setScale(8, RoundingMode.HALF_UP).signum() == 0) {
                breaches.add(Breach.error(
                        CONTRADICTORY_PARENTAGE,
                        field,
                        probability.toPlainString(),
                        "A probability of %s is as good as 0; leave that male out, or give him at least 0.00000001."
                                .formatted(probability.toPlainString())));
            }
        }
        var sum = probabilities.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        if (sum.compareTo(BigDecimal.ONE) > 0) {
            breaches.add(Breach.error(
                    CONTRADICTORY_PARENTAGE,
                    field,
                    sum.toPlainString(),
                    "The probabilities of the candidates sum to %s; together they are at most 1 (what is left to 1 is an unnamed male)."
                            .formatted(sum.toPlainString())));
        }
        return breaches;
    }

    /** Everything that is wrong or strained about one animal and its parents. */
    public List<Breach> check(Kin young, Origin origin, @Nullable Kin dam, List<Kin> sires) {
        var breaches = new ArrayList<Breach>();
        if (young.born() != null && young.died() != null && young.died().surelyBefore(young.born())) {
            breaches.add(Breach.error(
                    DIED_BEFORE_BIRTH,
                    "died",
                    young.died(),
                    "%s was born on %s and cannot have died on %s; correct one of the two."
                            .formatted(young.label(), young.born(), young.died())));
        }
        if (origin == Origin.WILD_CAUGHT && (dam != null || !sires.isEmpty())) {
            breaches.add(Breach.error(
                    FOUNDER_WITH_PARENTS,
                    "origin",
                    origin.word(),
                    "%s is wild-caught but has %s as a parent; leave the parents out, or correct the origin."
                            .formatted(
                                    young.label(),
                                    dam != null ? dam.label() : sires.get(0).label())));
        }
        if (dam != null) {
            checkDam(young, dam, breaches);
        }
        for (var sire : sires) {
            checkSire(young, sire, breaches);
        }
        return breaches;
    }

    private void checkDam(Kin young, Kin dam, List<Breach> breaches) {
        if (dam.sex() == Sex.MALE) {
            breaches.add(Breach.error(
                    DAM_NOT_FEMALE,
                    "dam",
                    dam.label(),
                    "%s is given as dam of %s but is registered as male; which of the two is wrong?"
                            .formatted(dam.label(), young.label())));
        }
        if (young.born() == null) {
            return;
        }
        checkAge(young, dam, "dam", DAM_TOO_YOUNG, breaches);
        if (dam.died() != null && dam.died().surelyBefore(young.born())) {
            breaches.add(Breach.error(
                    DAM_DIED_BEFORE_BIRTH,
                    "dam",
                    dam.label(),
                    "%s died on %s, %s was born on %s: a dam lives at the birth. Correct one of the two dates, or the dam."
                            .formatted(dam.label(), dam.died(), young.label(), young.born())));
        }
    }

    private void checkSire(Kin young, Kin sire, List<Breach> breaches) {
        if (sire.sex() == Sex.FEMALE) {
            breaches.add(Breach.error(
                    SIRE_NOT_MALE,
                    "sire",
                    sire.label(),
                    "%s is given as sire of %s but is registered as female; which of the two is wrong?"
                            .formatted(sire.label(), young.label())));
        }
        if (young.born() == null) {
            return;
        }
        checkAge(young, sire, "sire", SIRE_TOO_YOUNG, breaches);
        var diedLatest = sire.died() == null ? null : sire.died().latest();
        var bornEarliest = young.born().earliest();
        if (diedLatest != null && bornEarliest != null) {
            var conceived = bornEarliest.minusDays(profile.gestation().daysFromOvulationToBirth());
            long days = ChronoUnit.DAYS.between(diedLatest, conceived);
            if (days > 0) {
                breaches.add(storedSperm(young, sire, conceived, days));
            }
        }
    }

    private Breach storedSperm(Kin young, Kin sire, LocalDate conceived, long days) {
        var known = days <= profile.breeding().daysOfSpermStorage()
                ? "stored sperm is known up to %d days; a DNA test is advised"
                        .formatted(profile.breeding().daysOfSpermStorage())
                : "that is beyond every published case (%d days); consider another male, or none"
                        .formatted(profile.breeding().daysOfSpermStorage());
        return Breach.warning(
                Rule.STORED_SPERM,
                "sire",
                sire.label(),
                "%s was conceived about %s, %d days after the death of %s on %s: %s."
                        .formatted(young.label(), conceived, days, sire.label(), sire.died(), known),
                null);
    }

    private void checkAge(Kin young, Kin parent, String field, ProblemType tooYoung, List<Breach> breaches) {
        if (parent.born() == null || young.born() == null) {
            return;
        }
        var parentEarliest = parent.born().earliest();
        var youngLatest = young.born().latest();
        if (parentEarliest == null || youngLatest == null) {
            return;
        }
        long mostDays = ChronoUnit.DAYS.between(parentEarliest, youngLatest);
        if (mostDays <= 0) {
            breaches.add(Breach.error(
                    BORN_BEFORE_PARENT,
                    field,
                    parent.label(),
                    "%s was born on %s, its %s %s on %s: a parent is born first. Correct one of the two dates, or the %s."
                            .formatted(young.label(), young.born(), field, parent.label(), parent.born(), field)));
        } else if (mostDays < profile.breeding().daysOfAgeAtFirstBirth()) {
            breaches.add(Breach.error(
                    tooYoung,
                    field,
                    parent.label(),
                    "%s was at most %d days old when %s was born on %s; a %s of this taxon is at least %d."
                            .formatted(
                                    parent.label(),
                                    mostDays,
                                    young.label(),
                                    young.born(),
                                    field,
                                    profile.breeding().daysOfAgeAtFirstBirth())));
        }
    }
}
