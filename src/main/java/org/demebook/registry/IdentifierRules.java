package org.demebook.registry;

import static org.demebook.problem.ProblemType.INVALID_TRANSPONDER;
import static org.demebook.problem.ProblemType.REFERENCE_TAKEN;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.consent.FieldGroup;
import org.demebook.keeper.Standing;
import org.demebook.notation.Transponder;
import org.jspecify.annotations.Nullable;

/** What an animal is known by, in the form that is stored; what is not free or not valid is added to the breaches. */
@ApplicationScoped
class IdentifierRules {
    @Inject
    AnimalSight sight;

    /** Everything that a new animal brings. */
    List<IdentifierView> check(Standing by, NewAnimal animal, UUID collectionId, List<Breach> breaches) {
        var stated = new ArrayList<IdentifierView>();
        for (var code : Objects.requireNonNullElse(animal.transponders(), List.<String>of())) {
            stated.add(new IdentifierView(Identifier.TRANSPONDER, code));
        }
        for (var mark : Objects.requireNonNullElse(animal.marks(), List.<String>of())) {
            stated.add(new IdentifierView(Identifier.MARK, mark));
        }
        if (animal.ownReference() != null) {
            stated.add(new IdentifierView(Identifier.OWN_REFERENCE, animal.ownReference()));
        }
        var found = new ArrayList<Breach>();
        var identifiers = stated.stream()
                .map(identifier -> check(by, identifier, collectionId, null, found))
                .toList();
        // a dead one carries its transponder into no confusion
        found.stream()
                .filter(breach -> animal.died() == null || breach.isError())
                .forEach(breaches::add);
        return distinct(identifiers);
    }

    private static List<IdentifierView> distinct(List<IdentifierView> identifiers) {
        var distinct = new ArrayList<IdentifierView>();
        for (var identifier : identifiers) {
            if (distinct.stream().noneMatch(identifier::isSame)) {
                distinct.add(identifier);
            }
        }
        return distinct;
    }

    /** @param bearerId the animal that it is for; null when it is a new one */
    IdentifierView check(
            Standing by, IdentifierView stated, UUID collectionId, @Nullable UUID bearerId, List<Breach> breaches) {
        switch (stated.kind()) {
            case Identifier.TRANSPONDER -> {
                try {
                    var transponder = Transponder.parse(stated.value());
                    breaches.addAll(carried(by, transponder, bearerId));
                    return IdentifierView.of(transponder, stated.value());
                } catch (IllegalArgumentException e) {
                    breaches.add(Breach.error(
                            INVALID_TRANSPONDER,
                            "transponders",
                            stated.value(),
                            "%s: %s.".formatted(stated.value(), e.getMessage())));
                    return stated;
                }
            }
            case Identifier.OWN_REFERENCE -> {
                var reference = stated.value().strip();
                Identifier.reference(by.populationId(), collectionId, reference)
                        .ifPresent(taken -> breaches.add(Breach.error(
                                REFERENCE_TAKEN,
                                "ownReference",
                                reference,
                                "You call %s \"%s\" already; choose another reference."
                                        .formatted(Animal.of(by.populationId(), taken.animalId).number, reference))));
                return new IdentifierView(Identifier.OWN_REFERENCE, reference);
            }
            default -> {
                return new IdentifierView(Identifier.MARK, stated.value().strip());
            }
        }
    }

    /** Other living animals that carry a transponder, or one that is a slip of the hand away. */
    List<Breach> carried(Standing by, Transponder transponder, @Nullable UUID bearerId) {
        var codes = new ArrayList<>(transponder.neighbours());
        codes.add(transponder.code());
        var lens = sight.lens(by);
        var breaches = new ArrayList<Breach>();
        for (var other : Identifier.carried(by.populationId(), codes)) {
            if (other.animal().id.equals(bearerId)) {
                continue;
            }
            var seen = AnimalSight.shows(lens, other.animal(), FieldGroup.IDENTITY)
                    && AnimalSight.shows(lens, other.animal(), FieldGroup.MARKS_AND_PHOTOS);
            if (other.code().equals(transponder.code())) {
                breaches.add(TransponderRules.taken(transponder, seen ? other.animal().number : null));
            } else if (seen) {
                breaches.add(TransponderRules.near(transponder, other.code(), other.animal().number));
            }
        }
        return breaches;
    }
}
