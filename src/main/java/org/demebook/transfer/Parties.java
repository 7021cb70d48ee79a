package org.demebook.transfer;

import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;

/** Who is on which side of a transfer. */
@ApplicationScoped
class Parties {
    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Days days;

    /** Whether the asker acts for the collection that the animal leaves. */
    boolean gives(Standing by, Transfer transfer) {
        return keepers.actsFor(by.populationId(), by.keeperId(), transfer.fromCollectionId);
    }

    /** Whether it is addressed to the asker, or went into a collection that they act for. */
    boolean receives(Standing by, Transfer transfer) {
        return by.keeperId().equals(transfer.toKeeperId)
                || transfer.toCollectionId != null
                        && keepers.actsFor(by.populationId(), by.keeperId(), transfer.toCollectionId);
    }

    /** The transfers of an animal that stand or have moved it, the latest first: none that came to nothing. */
    List<Transfer> standing(UUID populationId, UUID animalId) {
        return Transfer.openOrDone(populationId, animalId).stream()
                .filter(transfer -> !transfer.due(days.now()))
                .toList();
    }

    /** The last of them with the asker on one of its sides. */
    Optional<Transfer> lastOfTheirs(Standing by, UUID animalId) {
        return standing(by.populationId(), animalId).stream()
                .filter(transfer -> gives(by, transfer) || receives(by, transfer))
                .findFirst();
    }

    /** For who was on a side of a transfer of the animal, or sees it; refuses everybody else with NO_SUCH_ANIMAL. */
    Custody known(Standing by, String number) {
        var plain = Animals.number(number).toString();
        var theirs =
                Transfer.ofNumberAndSide(by.populationId(), plain, by.keeperId(), keepers.collectionIds(by)).stream()
                        .anyMatch(transfer -> !transfer.due(days.now()));
        return theirs ? animals.custodyUnseen(by.populationId(), plain).orElseThrow() : animals.custody(by, number);
    }

    /** Nobody gives an animal twice: who gave it away is told when, and what to do if it is with them all the same. */
    void requireNotGivenAway(Standing by, Custody animal) {
        var held = animal.collectionId();
        if (held != null && keepers.actsFor(by.populationId(), by.keeperId(), held)) {
            return;
        }
        lastOfTheirs(by, animal.id())
                .filter(transfer -> !transfer.state.open() && gives(by, transfer))
                .ifPresent(transfer -> {
                    throw new Refusal(
                            NOT_YOUR_ANIMAL,
                            "%s left your collection with transfer %s, %s at %s. If it is with you all the same, report that first (POST …/animals/%s/disputes)."
                                    .formatted(
                                            animal.number(),
                                            transfer.id,
                                            transfer.state.word(),
                                            transfer.endedAt,
                                            animal.number()));
                });
    }
}
