package org.demebook.crossing;

import static org.demebook.problem.ProblemType.ANIMAL_ELSEWHERE;
import static org.demebook.problem.ProblemType.CROSSING_ENDED;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.crossing.CrossingFacts.CrossingWithdrawn;
import org.demebook.federation.Federations;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.OffersElsewhere;
import org.demebook.wall.WholeRegister;

/** Tells the register which animals are offered to other nodes, on their way, or kept there. */
@ApplicationScoped
class CrossingOffers implements OffersElsewhere {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Federations federations;

    @Inject
    Spoken spoken;

    @WholeRegister
    @Override
    public Optional<Elsewhere> of(UUID populationId, UUID animalId) {
        return Crossing.lastGiven(populationId, animalId).flatMap(crossing -> where(crossing, animalId));
    }

    private Optional<Elsewhere> where(Crossing crossing, UUID animalId) {
        var number = animals.numbers(crossing.populationId, Set.of(animalId)).get(animalId);
        var node = federations.codeOfNode(crossing.populationId, crossing.node).orElse(crossing.node);
        return switch (crossing.state) {
            case OFFERED ->
                Optional.of(new Elsewhere(
                        true,
                        "%s is offered to a keeper on the node %s; withdraw that first (POST …/crossings/%s/withdrawal)."
                                .formatted(number, node, crossing.id)));
            case ON_ITS_WAY -> Optional.of(gone(number));
            case ARRIVED -> {
                var custody = animals.custody(crossing.populationId, animalId);
                yield crossing.holderId == null || !crossing.holderId.equals(custody.collectionId())
                        ? Optional.empty() // it came back since
                        : Optional.of(gone(number));
            }
            default -> Optional.empty();
        };
    }

    @WholeRegister
    @Override
    public boolean isGiver(Standing by, UUID animalId) {
        return Crossing.lastGiven(by.populationId(), animalId)
                .filter(crossing -> keepers.collectionIds(by).contains(crossing.collectionId))
                .isPresent();
    }

    /** Says nothing of the node or the crossing: others than its giver may come upon it. */
    private static Elsewhere gone(String number) {
        return new Elsewhere(
                false,
                "By the register %s is kept on another node, or on its way there: only its keeper there can act on it. Who gave it finds the crossing under …/crossings."
                        .formatted(number));
    }

    @Override
    public void takeBack(Standing by, UUID animalId, String reason) {
        Crossing.lastGiven(by.populationId(), animalId)
                .filter(crossing -> crossing.state == CrossingState.OFFERED)
                .ifPresent(crossing -> {
                    journal.record(by.populationId(), by.keeperId(), new CrossingWithdrawn(crossing.id, reason));
                    withdraw(crossing);
                });
    }

    private void withdraw(Crossing crossing) {
        try {
            spoken.withdraw(crossing.populationId, crossing.id);
        } catch (Refusal refusal) {
            if (refusal.type() == CROSSING_ENDED) {
                throw new Refusal(
                        ANIMAL_ELSEWHERE,
                        "The animal is offered to another node, and that cannot be taken back any more; wait a minute and look again.");
            }
            throw refusal;
        }
    }
}
