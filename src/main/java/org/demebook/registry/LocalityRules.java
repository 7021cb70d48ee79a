package org.demebook.registry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.demebook.problem.Rule;
import org.jspecify.annotations.Nullable;

/**
 * What must hold between the localities of an animal and of its parents: young of two localities are of neither, and a bred
 * animal's locality is known no better than its parents'. Common practice, no source.
 *
 * @param ownLocality of the population, for those of whom nothing else is said
 */
record LocalityRules(String ownLocality) {
    static final Set<Rule> RULES = Set.of(Rule.LOCALITY_MIXED, Rule.LOCALITY_SURER_THAN_PARENT);

    List<Breach> check(Kin young, @Nullable Kin dam, List<Kin> sires) {
        var parents = Stream.concat(Stream.ofNullable(dam), sires.stream()).toList();
        if (parents.isEmpty()) {
            return List.of();
        }
        var breaches = new ArrayList<Breach>();
        mixed(young, parents).or(() -> ofAnother(young, parents.get(0))).ifPresent(breaches::add);
        surer(young, parents).ifPresent(breaches::add);
        return breaches;
    }

    private LocalityClaim of(Kin kin) {
        return LocalityClaim.of(kin.locality(), ownLocality);
    }

    private static @Nullable String value(Kin young) {
        return young.locality() == null ? null : young.locality().locality();
    }

    private Optional<Breach> mixed(Kin young, List<Kin> parents) {
        var one = parents.get(0);
        return parents.stream()
                .filter(other -> of(other).isOfAnother(of(one)))
                .findFirst()
                .map(other -> Breach.warning(
                        Rule.LOCALITY_MIXED,
                        "locality",
                        value(young),
                        "%s is of %s, %s of %s: young of both are mixed (%s/%s), and never pure. Correct one of the two claims or the parentage, or leave it so."
                                .formatted(
                                        one.label(),
                                        of(one).words(),
                                        other.label(),
                                        of(other).words(),
                                        of(one).locality(),
                                        of(other).locality()),
                        likelier(one, other)));
    }

    private @Nullable String likelier(Kin one, Kin other) {
        if (of(one).certainty() == of(other).certainty()) {
            return null;
        }
        var weaker = of(one).certainty().isWeakerThan(of(other).certainty()) ? one : other;
        return "The claim of %s: it is the less sure one.".formatted(weaker.label());
    }

    private Optional<Breach> ofAnother(Kin young, Kin parent) {
        return young.locality() == null || !of(young).isOfAnother(of(parent))
                ? Optional.empty()
                : Optional.of(Breach.warning(
                        Rule.LOCALITY_MIXED,
                        "locality",
                        value(young),
                        "%s is claimed to be of %s, but its parent %s is of %s: young are of their parents' locality. Correct one of the two claims, or the parentage."
                                .formatted(
                                        young.label(),
                                        of(young).words(),
                                        parent.label(),
                                        of(parent).words()),
                        null));
    }

    private Optional<Breach> surer(Kin young, List<Kin> parents) {
        return young.locality() == null
                ? Optional.empty()
                : parents.stream()
                        .filter(parent ->
                                of(parent).certainty().isWeakerThan(of(young).certainty()))
                        .findFirst()
                        .map(parent -> Breach.warning(
                                Rule.LOCALITY_SURER_THAN_PARENT,
                                "locality",
                                value(young),
                                "The locality of %s is claimed as %s, that of its parent %s as %s: it is known no better than its parents'. Claim less for the young, or more for the parent if there is a paper."
                                        .formatted(
                                                young.label(),
                                                of(young).certainty().word(),
                                                parent.label(),
                                                of(parent).certainty().word()),
                                "The claim for the young."));
    }
}
