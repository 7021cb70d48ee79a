package org.demebook.transfer;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.jspecify.annotations.Nullable;

/** Shows transfers to one of their two sides. A fixed number of queries for any number of transfers. */
@ApplicationScoped
class TransferViews {
    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    TransferView of(Standing by, Transfer transfer) {
        return of(by, List.of(transfer), keepers.collectionIds(by)).get(0);
    }

    Page<TransferView> page(Standing by, @Nullable State state, @Nullable String after, int limit) {
        var own = keepers.collectionIds(by);
        var where =
                new StringBuilder("populationId = :population and (fromCollectionId in :own or toKeeperId = :keeper)");
        var parameters = new HashMap<String, Object>();
        parameters.put("population", by.populationId());
        parameters.put("own", own);
        parameters.put("keeper", by.keeperId());
        if (state != null) {
            where.append(" and state = :state");
            parameters.put("state", state);
        }
        if (after != null) {
            where.append(" and id < :after");
            parameters.put("after", Page.id(after));
        }
        List<Transfer> read = Transfer.<Transfer>find(where + " order by id desc", parameters)
                .page(0, limit + 1)
                .list();
        return Page.of(of(by, read, own), limit, transfer -> transfer.id().toString());
    }

    private List<TransferView> of(Standing by, List<Transfer> transfers, Set<UUID> own) {
        var animalIds =
                transfers.stream().map(transfer -> transfer.animalId).distinct().toList();
        var animalOfId = animals.viewsInTransfer(by, animalIds).stream()
                .collect(Collectors.toMap(AnimalView::id, animal -> animal));
        var keeperIds = new HashSet<UUID>();
        transfers.forEach(transfer -> {
            keeperIds.add(transfer.offeredBy);
            if (transfer.toKeeperId != null) {
                keeperIds.add(transfer.toKeeperId);
            }
        });
        var nameOfId = keepers.names(keeperIds);
        var transferIds = transfers.stream().map(transfer -> transfer.id).toList();
        var disputeOfId = Dispute.openOver(by.populationId(), transferIds).stream()
                .collect(Collectors.toMap(dispute -> dispute.transferId, dispute -> dispute.id));
        return transfers.stream()
                .map(transfer -> view(
                        transfer,
                        own.contains(transfer.fromCollectionId),
                        animalOfId.get(transfer.animalId),
                        nameOfId,
                        disputeOfId.get(transfer.id)))
                .toList();
    }

    private static TransferView view(
            Transfer transfer, boolean given, AnimalView animal, Map<UUID, String> nameOfId, @Nullable UUID disputeId) {
        return new TransferView(
                transfer.id,
                given,
                transfer.kind,
                transfer.state,
                animal,
                nameOfId.get(transfer.offeredBy),
                transfer.toKeeperId == null ? null : nameOfId.get(transfer.toKeeperId),
                given ? transfer.fromCollectionId : null,
                given ? null : transfer.toCollectionId,
                disputeId,
                transfer.offeredAt,
                transfer.expiresAt,
                transfer.handedOverOn,
                transfer.endedAt,
                transfer.note,
                transfer.reason,
                transfer.revision);
    }
}
