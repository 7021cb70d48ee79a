package org.demebook.transfer;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.keeper.Leaving;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;

/** Nobody leaves while somebody waits for their answer: offers, animals handed out, and disputes come to their ends first. */
@ApplicationScoped
class OpenOfLeavers implements Leaving {
    /** Stands for no collection in a list that would be empty. */
    private static final UUID NONE = new UUID(0, 0);

    @Inject
    Animals animals;

    @Inject
    Days days;

    @Override
    public List<String> inTheWay(Standing by, Set<UUID> alone) {
        var own = alone.isEmpty() ? Set.of(NONE) : alone;
        var transfers = Transfer.<Transfer>list(
                        "populationId = ?1 and state in ?2 and (fromCollectionId in ?3 or toKeeperId = ?4) order by id",
                        by.populationId(),
                        List.of(State.OFFERED, State.HANDED_OUT),
                        own,
                        by.keeperId())
                .stream()
                .filter(transfer -> !transfer.due(days.now()))
                .toList();
        var disputes = Dispute.<Dispute>list(
                "populationId = ?1 and state = ?2 and (reportedBy = ?3 or reportedCollectionId in ?4"
                        + " or registeredCollectionId in ?4 or registeredOwnerCollectionId in ?4) order by id",
                by.populationId(),
                DisputeState.OPEN,
                by.keeperId(),
                own);
        var numbers = animals.numbers(
                by.populationId(),
                Stream.concat(
                                transfers.stream().map(transfer -> transfer.animalId),
                                disputes.stream().map(dispute -> dispute.animalId))
                        .collect(Collectors.toSet()));
        var inTheWay = new ArrayList<String>();
        for (var transfer : transfers) {
            inTheWay.add(
                    by.keeperId().equals(transfer.toKeeperId)
                            ? "%s is offered to you: accept or refuse it first (POST …/transfers/%s/refusal)."
                                    .formatted(numbers.get(transfer.animalId), transfer.id)
                            : "%s is %s: withdraw that first, or wait for the answer (POST …/transfers/%s/withdrawal)."
                                    .formatted(
                                            numbers.get(transfer.animalId),
                                            transfer.state == State.OFFERED ? "offered to somebody" : "handed out",
                                            transfer.id));
        }
        for (var dispute : disputes) {
            inTheWay.add("%s is in a dispute: it has to be settled first (…/disputes/%s)."
                    .formatted(numbers.get(dispute.animalId), dispute.id));
        }
        return inTheWay;
    }
}
