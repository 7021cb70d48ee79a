package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.keeper.Standing;
import org.demebook.notation.Origin;
import org.jspecify.annotations.Nullable;

/** Holds a registered animal to the rules, beside its parents and its young; what was left before is not found again. */
@ApplicationScoped
class Family {
    @Inject
    Registration registration;

    @Inject
    LeftFindings leftFindings;

    @Inject
    AnimalSight sight;

    /** @param described the animal as it is, or as it is going to be */
    List<Breach> withParents(Standing by, Animal animal, Kin described, Origin origin) {
        var lens = sight.lens(by);
        var dam = animal.damId == null ? null : seen(lens, Animal.of(animal.populationId, animal.damId));
        var sires = sight.seen(by, sires(animal));
        var breaches = registration.rules(by).check(described, origin, Registration.kin(dam), Registration.kin(sires));
        var subjects = new ArrayList<>(known(animal.id, animal.litterId, animal.damId));
        sires.forEach(sire -> subjects.add(sire.id));
        return leftFindings.settled(animal.populationId, subjects).without(subjects, breaches);
    }

    /** @param described the animal as it is, or as it is going to be */
    List<Breach> withYoung(Standing by, Animal animal, Kin described) {
        var rules = registration.rules(by);
        var young = sight.seen(by, Animal.youngOf(animal.populationId, animal.id));
        var settled = leftFindings.settled(
                animal.populationId,
                Stream.concat(
                                Stream.of(animal.id),
                                young.stream().flatMap(one -> known(one.id, one.litterId, null).stream()))
                        .distinct()
                        .toList());
        var breaches = new ArrayList<Breach>();
        for (var one : young) {
            var isDam = animal.id.equals(one.damId);
            var found = rules.check(
                    one.kin(), Origin.UNKNOWN, isDam ? described : null, isDam ? List.of() : List.of(described));
            breaches.addAll(settled.without(known(animal.id, one.id, one.litterId), found));
        }
        return breaches;
    }

    private static List<UUID> known(UUID id, @Nullable UUID other, @Nullable UUID third) {
        return Stream.of(id, other, third).filter(Objects::nonNull).toList();
    }

    private static @Nullable Animal seen(Lens lens, Animal animal) {
        return AnimalSight.shows(lens, animal, FieldGroup.IDENTITY) ? animal : null;
    }

    private static List<Animal> sires(Animal animal) {
        if (animal.sireId != null) {
            return List.of(Animal.of(animal.populationId, animal.sireId));
        }
        return CandidateSire.of(animal.populationId, List.of(animal.id)).stream()
                .map(candidate -> Animal.of(animal.populationId, candidate.sireId))
                .toList();
    }
}
