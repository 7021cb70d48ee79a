package org.demebook.transfer;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.registry.LifeEvents;

/**
 * The day on which an animal came into the hands that it is in: alive, as far as a transfer is of living animals. Those
 * before are for their two sides alone to know.
 */
@ApplicationScoped
class HandOvers implements LifeEvents {
    @Override
    public List<LifeEvent> after(UUID populationId, UUID animalId, LocalDate day) {
        var since = Dispute.lastThatMoved(populationId, animalId)
                .map(dispute -> Objects.requireNonNull(dispute.endedAt))
                .orElse(Instant.EPOCH);
        return Transfer.lastHandedOverAfter(populationId, animalId, day, since).stream()
                .map(transfer -> new LifeEvent(Objects.requireNonNull(transfer.handedOverOn), "it was handed over"))
                .toList();
    }
}
