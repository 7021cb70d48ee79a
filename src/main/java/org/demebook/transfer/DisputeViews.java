package org.demebook.transfer;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** Who sees a dispute, and what of it. A side sees that there is another and what it said, never who it is. */
@ApplicationScoped
class DisputeViews {
    /** The sides of {@link #isSide}, as a condition of a query. */
    private static final String OF_THEIRS = " and (reportedBy = :keeper or reportedCollectionId in :own"
            + " or registeredCollectionId in :own or registeredOwnerCollectionId in :own"
            + " or transferId in (select t.id from Transfer t where t.populationId = :population"
            + " and (t.fromCollectionId in :own or t.toCollectionId in :own or t.toKeeperId = :keeper)))";

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    /** Whether the asker reported it, holds or owns the animal by the register, or is on a side of the transfer. */
    @WholeRegister
    boolean isSide(Standing by, Dispute dispute) {
        return isSide(by, dispute, keepers.collectionIds(by), Transfer.of(dispute.populationId, dispute.transferId));
    }

    private static boolean isSide(Standing by, Dispute dispute, Set<UUID> own, Transfer transfer) {
        return reported(by, dispute, own)
                || own.contains(dispute.registeredCollectionId)
                || own.contains(dispute.registeredOwnerCollectionId)
                || isSide(by, transfer, own);
    }

    private static boolean reported(Standing by, Dispute dispute, Set<UUID> own) {
        return by.keeperId().equals(dispute.reportedBy) || own.contains(dispute.reportedCollectionId);
    }

    private static boolean isSide(Standing by, Transfer transfer, Set<UUID> own) {
        return by.keeperId().equals(transfer.toKeeperId)
                || Stream.of(transfer.fromCollectionId, transfer.toCollectionId).anyMatch(own::contains);
    }

    /** One that the asker sees; in as many queries where there is none as where it is not for them. */
    Optional<Dispute> seen(Standing by, UUID disputeId) {
        if (by.isCoordinator()) {
            return Optional.ofNullable(Dispute.of(by.populationId(), disputeId));
        }
        return Dispute.find(
                        "populationId = :population and id = :id" + OF_THEIRS,
                        Map.of(
                                "population", by.populationId(),
                                "id", disputeId,
                                "keeper", by.keeperId(),
                                "own", keepers.collectionIds(by)))
                .firstResultOptional();
    }

    /** Those that the asker sees, the latest first: a coordinator all, everybody else those that they are a side of. */
    Page<DisputeView> page(Standing by, @Nullable DisputeState state, @Nullable String after, int limit) {
        var where = new StringBuilder("populationId = :population");
        var parameters = new HashMap<String, Object>();
        parameters.put("population", by.populationId());
        if (!by.isCoordinator()) {
            where.append(OF_THEIRS);
            parameters.put("keeper", by.keeperId());
            parameters.put("own", keepers.collectionIds(by));
        }
        if (state != null) {
            where.append(" and state = :state");
            parameters.put("state", state);
        }
        if (after != null) {
            where.append(" and id < :after");
            parameters.put("after", Page.id(after));
        }
        List<Dispute> read = Dispute.<Dispute>find(where + " order by id desc", parameters)
                .page(0, limit + 1)
                .list();
        return Page.of(of(by, read), limit, dispute -> dispute.id().toString());
    }

    DisputeView of(Standing by, Dispute dispute) {
        return of(by, List.of(dispute)).get(0);
    }

    @WholeRegister
    List<DisputeView> of(Standing by, List<Dispute> disputes) {
        var own = keepers.collectionIds(by);
        var numbers = animals.numbers(
                by.populationId(),
                disputes.stream().map(dispute -> dispute.animalId).collect(Collectors.toSet()));
        return disputes.stream()
                .map(dispute -> view(by, dispute, own, numbers.get(dispute.animalId)))
                .toList();
    }

    private DisputeView view(Standing by, Dispute dispute, Set<UUID> own, String number) {
        var transfer = Transfer.of(dispute.populationId, dispute.transferId);
        var reported = reported(by, dispute, own);
        return new DisputeView(
                dispute.id,
                number,
                dispute.state,
                reported,
                dispute.seenOn,
                dispute.note,
                isSide(by, transfer, own) ? transfer.id : null,
                reported ? dispute.reportedCollectionId : null,
                isSide(by, dispute, own, transfer) ? null : sides(dispute),
                dispute.reportedAt,
                dispute.endedAt,
                dispute.reason,
                dispute.revision);
    }

    private DisputeView.Sides sides(Dispute dispute) {
        return new DisputeView.Sides(
                keepers.namesOf(dispute.populationId, dispute.reportedCollectionId),
                keepers.namesOf(dispute.populationId, dispute.registeredCollectionId));
    }
}
