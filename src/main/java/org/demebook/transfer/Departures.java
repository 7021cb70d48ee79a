package org.demebook.transfer;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.wall.WholeRegister;

/** When animals left collections, for the rooms that ask whether two could still meet. */
@ApplicationScoped
public class Departures {
    /**
     * @param on the day of the handing over; where that was not told, of the answer; where it was found to be elsewhere, the
     *     day on which it was seen there
     */
    public record Departure(UUID animalId, UUID fromCollectionId, LocalDate on) {}

    @Inject
    @Any
    Instance<DeparturesElsewhere> rooms;

    /** All departures of some animals. */
    @WholeRegister
    @Transactional
    public List<Departure> of(UUID populationId, Collection<UUID> animalIds) {
        List<Transfer> gone = animalIds.isEmpty()
                ? List.of()
                : Transfer.list(
                        "populationId = ?1 and animalId in ?2 and state in ?3",
                        populationId,
                        animalIds,
                        List.of(State.ACCEPTED, State.HANDED_OUT, State.CLAIMED));
        var departures = new ArrayList<Departure>();
        gone.forEach(
                transfer -> departures.add(new Departure(transfer.animalId, transfer.fromCollectionId, day(transfer))));
        Dispute.thatMoved(populationId, animalIds)
                .forEach(dispute -> departures.add(
                        new Departure(dispute.animalId, dispute.registeredCollectionId, dispute.seenOn)));
        if (!animalIds.isEmpty()) {
            rooms.forEach(room -> departures.addAll(room.of(populationId, animalIds)));
        }
        return departures;
    }

    private static LocalDate day(Transfer transfer) {
        if (transfer.handedOverOn != null) {
            return transfer.handedOverOn;
        }
        Instant moment =
                transfer.state == State.ACCEPTED ? Objects.requireNonNull(transfer.endedAt) : transfer.offeredAt;
        return LocalDate.ofInstant(moment, ZoneOffset.UTC);
    }
}
