package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.crossing.CrossingView.ToldAnimal;
import org.demebook.federation.Federations;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.jspecify.annotations.Nullable;

/** Shows crossings to their side on this node. */
@ApplicationScoped
class CrossingViews {
    /** Stands for no collection in a list that would be empty. */
    private static final UUID NONE = new UUID(0, 0);

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Federations federations;

    @Inject
    RecordWriter records;

    @Inject
    Reaches reaches;

    CrossingView of(Standing by, Crossing crossing) {
        return of(by, List.of(crossing)).get(0);
    }

    Page<CrossingView> page(Standing by, @Nullable CrossingState state, @Nullable String after, int limit) {
        var own = keepers.collectionIds(by);
        var where = new StringBuilder("populationId = :population"
                + " and (given and collectionId in :own or not given and keeperId = :keeper)");
        var parameters = new HashMap<String, Object>();
        parameters.put("population", by.populationId());
        parameters.put("own", own.isEmpty() ? List.of(NONE) : own);
        parameters.put("keeper", by.keeperId());
        if (state != null) {
            where.append(" and state = :state");
            parameters.put("state", state);
        }
        if (after != null) {
            where.append(" and revision < :after");
            parameters.put("after", Page.number(after));
        }
        List<Crossing> read = Crossing.<Crossing>find(where + " order by revision desc", parameters)
                .page(0, limit + 1)
                .list();
        return Page.of(of(by, read), limit, crossing -> Long.toString(crossing.revision()));
    }

    private List<CrossingView> of(Standing by, List<Crossing> crossings) {
        var animalIds = crossings.stream()
                .map(crossing -> crossing.animalId)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        var animalOfId = animals.viewsInTransfer(by, animalIds).stream()
                .collect(Collectors.toMap(AnimalView::id, animal -> animal));
        var nameOfId = keepers.names(
                crossings.stream().map(crossing -> crossing.keeperId).collect(Collectors.toSet()));
        return crossings.stream()
                .map(crossing -> view(by, crossing, animalOfId, nameOfId))
                .toList();
    }

    private CrossingView view(
            Standing by, Crossing crossing, Map<UUID, AnimalView> animalOfId, Map<UUID, String> nameOfId) {
        var record = record(crossing);
        var here = nameOfId.get(crossing.keeperId);
        var there = record == null ? null : record.giver();
        return new CrossingView(
                crossing.id,
                crossing.given,
                crossing.kind,
                crossing.state,
                federations.codeOfNode(by.populationId(), crossing.node).orElse(crossing.node),
                crossing.given ? here : there,
                crossing.given ? crossing.addressee : here,
                crossing.animalId == null ? null : animalOfId.get(crossing.animalId),
                record == null ? null : told(record),
                crossing.collectionId,
                crossing.offeredAt,
                crossing.expiresAt,
                record == null ? crossing.handedOverOn : record.handedOverOn(),
                crossing.movedAt,
                crossing.endedAt,
                record == null ? crossing.note : record.note(),
                crossing.reason,
                crossing.arrivedNowhere() ? true : null,
                crossing.state.open() ? reaches.of(crossing) : null,
                crossing.revision);
    }

    /** Of an offer that stands, as it was told; of an accepted one, as it was accepted. */
    private @Nullable HandedRecord record(Crossing crossing) {
        if (crossing.record != null) {
            return HandedRecord.parse(crossing.record);
        }
        return crossing.given || crossing.state != CrossingState.OFFERED
                ? null
                : records.told(crossing.populationId, crossing.id).orElse(null);
    }

    private static ToldAnimal told(HandedRecord record) {
        return new ToldAnimal(
                record.number().toString(),
                record.sex(),
                record.born(),
                record.origin(),
                record.locality(),
                record.transponders(),
                record.marks(),
                record.notes(),
                Forebears.of(record));
    }
}
