package org.demebook.federation;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** A node that this one neither follows nor waits for in a population. */
@Entity
@Table(name = "federated_aside")
@IdClass(AsideNode.Key.class)
class AsideNode extends PanacheEntityBase {
    record Key(UUID populationId, String nodeId) {}

    @Id
    UUID populationId;

    @Id
    String nodeId;

    protected AsideNode() {}

    AsideNode(UUID populationId, String nodeId) {
        this.populationId = populationId;
        this.nodeId = nodeId;
    }

    static boolean isOne(UUID populationId, String nodeId) {
        return count("populationId = ?1 and nodeId = ?2", populationId, nodeId) > 0;
    }

    static Set<String> of(UUID populationId) {
        return AsideNode.<AsideNode>stream("populationId = ?1", populationId)
                .map(row -> row.nodeId)
                .collect(Collectors.toSet());
    }

    static void remove(UUID populationId, String nodeId) {
        delete("populationId = ?1 and nodeId = ?2", populationId, nodeId);
    }
}
