package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.transfer.Departures.Departure;
import org.demebook.transfer.DeparturesElsewhere;

/** Animals that were released to other nodes: on the day of the handing over, or, where that was not told, of the release. */
@ApplicationScoped
class CrossedDepartures implements DeparturesElsewhere {
    @Override
    public List<Departure> of(UUID populationId, Collection<UUID> animalIds) {
        return Crossing.<Crossing>list(
                        "populationId = ?1 and animalId in ?2 and given and state in ?3 order by id",
                        populationId,
                        animalIds,
                        List.of(CrossingState.ON_ITS_WAY, CrossingState.ARRIVED))
                .stream()
                .map(crossing -> new Departure(
                        Objects.requireNonNull(crossing.animalId),
                        Objects.requireNonNull(crossing.collectionId),
                        crossing.handedOverOn != null
                                ? crossing.handedOverOn
                                : LocalDate.ofInstant(Objects.requireNonNull(crossing.movedAt), ZoneOffset.UTC)))
                .toList();
    }
}
