package org.demebook.consent;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.demebook.consent.GrantFacts.SharingChosen;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** The ready choice that a collection made last. */
@Entity
@Table(name = "sharing_choice")
@IdClass(Sharing.Key.class)
class Sharing extends PanacheEntityBase {
    record Key(UUID populationId, UUID collectionId) {}

    @Id
    UUID populationId;

    @Id
    UUID collectionId;

    String choice;
    UUID chosenBy;
    Instant chosenAt;
    long revision;

    protected Sharing() {}

    static @Nullable Sharing of(UUID populationId, UUID collectionId) {
        return findById(new Key(populationId, collectionId));
    }

    static void chosen(Entry entry, SharingChosen chosen) {
        var present = of(entry.populationId(), chosen.collectionId());
        var sharing = present == null ? new Sharing() : present;
        sharing.populationId = entry.populationId();
        sharing.collectionId = chosen.collectionId();
        sharing.choice = chosen.choice().word();
        sharing.chosenBy = entry.actorId();
        sharing.chosenAt = entry.recordedAt();
        sharing.revision = entry.seq();
        sharing.persist();
    }
}
