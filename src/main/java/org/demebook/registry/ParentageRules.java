package org.demebook.registry;

import static org.demebook.problem.ProblemType.CONTRADICTORY_PARENTAGE;
import static org.demebook.problem.ProblemType.DAM_NOT_FEMALE;
import static org.demebook.problem.ProblemType.FOUNDER_WITH_PARENTS;
import static org.demebook.problem.ProblemType.SIRE_NOT_MALE;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Rule;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/** What must hold between an animal and its parents, for one that is registered, corrected or imported alike. */
public final class ParentageRules {
    private final DateRules dates;
    private final FamilyDays days;
    private final LocalityRules localities;

    /**
     * @param locality of the population
     * @param today the keeper's day
     */
    public ParentageRules(TaxonProfile profile, String locality, LocalDate today) {
        this.dates = new DateRules(today);
        this.days = new FamilyDays(profile, dates);
        this.localities = new LocalityRules(locality);
    }

    public DateRules dates() {
        return dates;
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
        if (origin == Origin.WILD_CAUGHT && (dam != null || !sires.isEmpty())) {
            var parent = dam != null ? dam : sires.get(0);
            breaches.add(
                    Breach.block(
                            FOUNDER_WITH_PARENTS,
                            Rule.FOUNDER_WITH_PARENTS,
                            "origin",
                            origin.word(),
                            "%s is wild-caught but has %s as a parent; leave the parents out, or correct the origin."
                                    .formatted(young.label(), parent.label()),
                            "The origin, if you know the parents from a keeper's book; the parents, if they were only assumed."));
        }
        if (dam != null) {
            checkSex(young, dam, Sex.MALE, "dam", DAM_NOT_FEMALE, Rule.DAM_NOT_FEMALE, breaches);
        }
        for (var sire : sires) {
            checkSex(young, sire, Sex.FEMALE, "sire", SIRE_NOT_MALE, Rule.SIRE_NOT_MALE, breaches);
        }
        breaches.addAll(days.check(young, dam, sires));
        breaches.addAll(localities.check(young, dam, sires));
        return breaches;
    }

    private static void checkSex(
            Kin young, Kin parent, Sex wrong, String role, ProblemType type, Rule rule, List<Breach> breaches) {
        if (parent.sex() != wrong) {
            return;
        }
        var determined = parent.sexDetermination();
        var message = "%s is given as %s of %s but is registered as %s%s; correct the sex or the %s."
                .formatted(parent.label(), role, young.label(), wrong.word(), howDetermined(determined), role);
        if (determined != null && determined.presumed()) {
            breaches.add(Breach.warning(
                    rule, role, parent.label(), message, "The sex: it was only presumed. Have it examined."));
        } else {
            var likelier = determined != null && determined.confirmed()
                    ? "The %s: the sex is confirmed.".formatted(role)
                    : null;
            breaches.add(Breach.block(type, rule, role, parent.label(), message, likelier));
        }
    }

    private static String howDetermined(@Nullable SexDetermination determined) {
        return determined == null
                ? ""
                : " (%s by %s)"
                        .formatted(
                                determined.confidence().word(),
                                determined.method().word());
    }
}
