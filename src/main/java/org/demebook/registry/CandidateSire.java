package org.demebook.registry;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** A male that may be an animal's sire. */
@Entity
@Table(name = "candidate_sire")
@IdClass(CandidateSire.Key.class)
class CandidateSire extends PanacheEntityBase {
    record Key(UUID populationId, UUID animalId, UUID sireId) {}

    @Id
    UUID populationId;

    @Id
    UUID animalId;

    @Id
    UUID sireId;

    BigDecimal probability;

    protected CandidateSire() {}

    CandidateSire(UUID populationId, UUID animalId, Sire.Candidate candidate) {
        this.populationId = populationId;
        this.animalId = animalId;
        this.sireId = candidate.sireId();
        this.probability = candidate.value();
    }

    static List<CandidateSire> of(UUID populationId, Collection<UUID> animalIds) {
        return animalIds.isEmpty()
                ? List.of()
                : list(
                        "populationId = ?1 and animalId in ?2 order by animalId, probability desc, sireId",
                        populationId,
                        animalIds);
    }

    static void clear(UUID populationId, UUID animalId) {
        delete("populationId = ?1 and animalId = ?2", populationId, animalId);
    }
}
