package org.demebook.care;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.care.CareFacts.CareTaskSilenced;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** Tasks that the keepers of a collection do not want to hear of. */
@Entity
@Table(name = "care_silence")
@IdClass(Silence.Key.class)
class Silence extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID collectionId;
    SilenceScope scope;
    CareKind kind;

    @Nullable
    UUID animalId;

    @Nullable
    String key;

    Instant silencedAt;

    protected Silence() {}

    Silence(Entry entry, CareTaskSilenced silenced) {
        this.populationId = entry.populationId();
        this.id = silenced.silenceId();
        this.collectionId = silenced.collectionId();
        this.scope = silenced.scope();
        this.kind = silenced.kind();
        this.animalId = silenced.animalId();
        this.key = silenced.key();
        this.silencedAt = entry.recordedAt();
    }

    static List<Silence> in(UUID populationId, Collection<UUID> collectionIds) {
        return list("populationId = ?1 and collectionId in ?2 order by id", populationId, collectionIds);
    }

    boolean covers(CareTask task, UUID taskCollectionId) {
        return collectionId.equals(taskCollectionId)
                && switch (scope) {
                    case TASK -> task.key().equals(key);
                    case KIND_OF_ANIMAL ->
                        task.kind() == kind
                                && task.animalId() != null
                                && task.animalId().equals(animalId);
                    case KIND -> task.kind() == kind;
                };
    }

    SilenceView view(Map<UUID, String> numbers) {
        return new SilenceView(
                id, scope, kind, animalId == null ? null : numbers.get(animalId), key, collectionId, silencedAt);
    }
}
