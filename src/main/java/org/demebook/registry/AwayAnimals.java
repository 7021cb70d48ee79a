package org.demebook.registry;

import static org.demebook.problem.ProblemType.ALREADY_IN_TRANSFER;
import static org.demebook.problem.ProblemType.ANIMAL_ELSEWHERE;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;

/** What may be done here with an animal that is offered to another node, on its way there, or kept there. */
@ApplicationScoped
public class AwayAnimals {
    @Inject
    @Any
    Instance<OffersElsewhere> rooms;

    /** Refuses with ANIMAL_ELSEWHERE, saying where it is, what can be done with an animal of this node alone. */
    public void requireHere(UUID populationId, UUID animalId) {
        refuse(populationId, animalId, false, ANIMAL_ELSEWHERE);
    }

    /** The same, and refuses with ALREADY_IN_TRANSFER an animal that is offered elsewhere. */
    public void requireFree(UUID populationId, UUID animalId) {
        requireHere(populationId, animalId);
        refuse(populationId, animalId, true, ALREADY_IN_TRANSFER);
    }

    private void refuse(UUID populationId, UUID animalId, boolean held, ProblemType type) {
        rooms.stream()
                .flatMap(room -> room.of(populationId, animalId).stream())
                .filter(elsewhere -> elsewhere.held() == held)
                .findFirst()
                .ifPresent(elsewhere -> {
                    throw new Refusal(type, elsewhere.sentence());
                });
    }

    /** Whether an animal is kept on another node, or on its way there, and the asker is who gave it. */
    public boolean gaveAway(Standing by, UUID animalId) {
        return rooms.stream()
                .anyMatch(room -> room.isGiver(by, animalId)
                        && room.of(by.populationId(), animalId)
                                .filter(elsewhere -> !elsewhere.held())
                                .isPresent());
    }

    /** Takes an offer to another node back, if there is one; refuses where it is too late for that. */
    public void takeBack(Standing by, UUID animalId, String reason) {
        rooms.stream().forEach(room -> room.takeBack(by, animalId, reason));
    }
}
