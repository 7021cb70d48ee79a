package org.demebook.registry;

import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Transponder;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.problem.Rule;
import org.demebook.registry.LeftFindings.LeftView;
import org.demebook.rest.ShownTo;
import org.demebook.wall.WholeRegister;

/** What the register finds strained about an animal when it is asked, and what was left as it is. */
@ApplicationScoped
public class AnimalFindings {
    /**
     * @param findings what is strained now and was not left
     * @param left what was left, the earliest first
     */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    public record AnimalFindingsView(List<Finding> findings, List<LeftView> left) {}

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Registration registration;

    @Inject
    Family family;

    @Inject
    OwnHistory history;

    @Inject
    Localities localities;

    @Inject
    IdentifierRules identifierRules;

    @Inject
    LeftFindings leftFindings;

    /** Of an animal in the asker's hands; refuses with NOT_YOUR_ANIMAL, since dates and reasons are its keeper's. */
    @WholeRegister
    @Transactional
    public AnimalFindingsView of(Standing by, String number) {
        var animal = animals.require(by, number);
        var own = keepers.collections(by).stream()
                .anyMatch(collection -> collection.id().equals(animal.collectionId)
                        || collection.id().equals(animal.ownerCollectionId));
        if (!own) {
            throw new Refusal(
                    NOT_YOUR_ANIMAL,
                    "%s is not in a collection of yours; only who holds or owns it sees its findings."
                            .formatted(animal.number));
        }
        return new AnimalFindingsView(
                standing(by, animal).stream().map(Breach::finding).distinct().toList(),
                leftFindings.about(by, subjects(animal)));
    }

    /** What is strained now and was not left. */
    @WholeRegister
    @Transactional
    List<Breach> standing(Standing by, Animal animal) {
        var subjects = subjects(animal);
        var breaches = new ArrayList<>(leftFindings.unsettled(by.populationId(), subjects, ofItself(by, animal)));
        var withParents = family.withParents(by, animal, animal.kin(), animal.origin);
        breaches.addAll(withParents);
        if (withParents.stream().noneMatch(breach -> breach.finding().rule() == Rule.LOCALITY_MIXED)) {
            breaches.addAll(leftFindings.unsettled(
                    by.populationId(),
                    subjects,
                    localities.mixedFurtherUp(by, animal).stream().toList()));
        }
        breaches.addAll(family.withYoung(by, animal, animal.kin()));
        return breaches;
    }

    private static List<UUID> subjects(Animal animal) {
        return Stream.of(animal.id, animal.litterId).filter(Objects::nonNull).toList();
    }

    private List<Breach> ofItself(Standing by, Animal animal) {
        var breaches = new ArrayList<Breach>();
        registration.checkDay("born", animal.born, breaches);
        registration.checkDay("died", animal.died, breaches);
        history.changedBefore(animal).ifPresent(breaches::add);
        if (animal.disputeId != null) {
            breaches.add(Breach.warning(
                    Rule.IN_TWO_PLACES,
                    "dispute",
                    animal.disputeId,
                    "The register has %s in one collection, and a keeper reports it in another. Read dispute %s; concede if they are right, else ask them to take it back or a coordinator to decide."
                            .formatted(animal.number, animal.disputeId),
                    null));
        }
        if (animal.died != null) {
            history.afterDeath(animal, animal.died).ifPresent(breaches::add);
        } else {
            for (var identifier : Identifier.of(animal.populationId, animal.id)) {
                if (identifier.kind.equals(Identifier.TRANSPONDER)) {
                    var transponder = Transponder.parse(identifier.value);
                    breaches.addAll(identifierRules.carried(by, transponder, animal.id));
                }
            }
        }
        return breaches;
    }
}
