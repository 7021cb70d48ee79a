package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** Somebody says that two records are one animal. */
@Entity
@Table(name = "same_animal_claim")
@IdClass(SameAnimalClaim.Key.class)
class SameAnimalClaim extends PanacheEntityBase {
    static final String CLAIMED = "claimed";
    static final String CONFIRMED = "confirmed";
    static final String REVERSED = "reversed";

    private static final String LIVING_THERE =
            "(select a.id from Animal a where a.populationId = ?1 and a.collectionId in ?4)";

    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID animalId;
    UUID otherId;
    UUID claimedBy;
    String state;

    @Nullable
    String evidence;

    long revision;

    protected SameAnimalClaim() {}

    SameAnimalClaim(Entry entry, AnimalFacts.SameAnimalClaimed claimed) {
        this.populationId = entry.populationId();
        this.id = claimed.claimId();
        this.animalId = claimed.animalId();
        this.otherId = claimed.otherId();
        this.claimedBy = entry.actorId();
        this.state = CLAIMED;
        this.evidence = claimed.evidence();
        this.revision = entry.seq();
    }

    static SameAnimalClaim of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** One that a keeper made, or that is about an animal that lives in one of these collections; one query. */
    static Optional<SameAnimalClaim> concerning(UUID populationId, UUID id, UUID keeperId, Set<UUID> collectionIds) {
        return find(
                        "populationId = ?1 and id = ?2 and (claimedBy = ?3 or animalId in " + LIVING_THERE
                                + " or otherId in " + LIVING_THERE + ")",
                        populationId,
                        id,
                        keeperId,
                        collectionIds)
                .firstResultOptional();
    }

    static List<SameAnimalClaim> about(UUID populationId, UUID animalId) {
        return list("populationId = ?1 and (animalId = ?2 or otherId = ?2) order by id", populationId, animalId);
    }
}
