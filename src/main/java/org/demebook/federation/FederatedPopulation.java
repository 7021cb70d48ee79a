package org.demebook.federation;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** A population that is shared with other nodes. */
@Entity
@Table(name = "federated_population")
class FederatedPopulation extends PanacheEntityBase {
    @Id
    UUID populationId;

    String founder;

    protected FederatedPopulation() {}

    FederatedPopulation(UUID populationId, String founder) {
        this.populationId = populationId;
        this.founder = founder;
    }

    static Optional<FederatedPopulation> of(UUID populationId) {
        return findByIdOptional(populationId);
    }

    static List<FederatedPopulation> inOrder() {
        return list("order by populationId");
    }
}
