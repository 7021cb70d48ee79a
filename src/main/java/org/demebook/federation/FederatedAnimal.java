package org.demebook.federation;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.protocol.AnimalId;

/** How an animal of this register is called between nodes. */
@Entity
@Table(name = "federated_animal")
@IdClass(FederatedAnimal.Key.class)
class FederatedAnimal extends PanacheEntityBase {
    record Key(UUID populationId, UUID animalId) {}

    @Id
    UUID populationId;

    @Id
    UUID animalId;

    String federatedId;

    protected FederatedAnimal() {}

    FederatedAnimal(UUID populationId, UUID animalId, String federatedId) {
        this.populationId = populationId;
        this.animalId = animalId;
        this.federatedId = federatedId;
    }

    static Optional<AnimalId> idOf(UUID populationId, UUID animalId) {
        return FederatedAnimal.<FederatedAnimal>findByIdOptional(new Key(populationId, animalId))
                .map(row -> AnimalId.parse(row.federatedId));
    }

    static Map<UUID, AnimalId> all(UUID populationId) {
        return FederatedAnimal.<FederatedAnimal>list("populationId", populationId).stream()
                .collect(Collectors.toMap(row -> row.animalId, row -> AnimalId.parse(row.federatedId)));
    }

    static Optional<UUID> called(UUID populationId, AnimalId federatedId) {
        return FederatedAnimal.<FederatedAnimal>find(
                        "populationId = ?1 and federatedId = ?2", populationId, federatedId.toString())
                .firstResultOptional()
                .map(row -> row.animalId);
    }
}
