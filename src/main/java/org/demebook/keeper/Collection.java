package org.demebook.keeper;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The set of animals that one keeper, or a household, holds in a population. */
@Entity
@Table(name = "collection")
@IdClass(Collection.Key.class)
class Collection extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    @Column(name = "population_id")
    UUID populationId;

    @Id
    UUID id;

    String label;

    @Nullable
    String region;

    @ElementCollection
    @CollectionTable(
            name = "collection_keeper",
            joinColumns = {
                @JoinColumn(name = "population_id", referencedColumnName = "population_id"),
                @JoinColumn(name = "collection_id", referencedColumnName = "id")
            })
    @Column(name = "keeper_id")
    Set<UUID> keeperIds = new HashSet<>();

    protected Collection() {}

    Collection(UUID populationId, UUID id, String label, Set<UUID> keeperIds) {
        this.populationId = populationId;
        this.id = id;
        this.label = label;
        this.keeperIds = new HashSet<>(keeperIds);
    }

    static List<Collection> of(UUID populationId, UUID keeperId) {
        return list("populationId = ?1 and ?2 member of keeperIds order by id", populationId, keeperId);
    }

    static Set<UUID> keepersOf(UUID populationId, UUID collectionId) {
        return Set.copyOf(getEntityManager()
                .createQuery(
                        "select k from Collection c join c.keeperIds k where c.populationId = ?1 and c.id = ?2",
                        UUID.class)
                .setParameter(1, populationId)
                .setParameter(2, collectionId)
                .getResultList());
    }

    /** By collection; one that states no region is not there. */
    static Map<UUID, String> regions(UUID populationId) {
        return getEntityManager()
                .createQuery(
                        "select c.id, c.region from Collection c where c.populationId = ?1 and c.region is not null",
                        Object[].class)
                .setParameter(1, populationId)
                .getResultStream()
                .collect(Collectors.toMap(row -> (UUID) row[0], row -> (String) row[1]));
    }

    /** Nobody acts for it any more, nor may anybody who once did come back to it. */
    static void close(UUID populationId, UUID id, String label) {
        deleteKeepers("and collection_id = ?2", populationId, id);
        update("label = ?3, region = null where populationId = ?1 and id = ?2", populationId, id, label);
    }

    static void rename(UUID populationId, UUID id, String label) {
        update("label = ?3 where populationId = ?1 and id = ?2", populationId, id, label);
    }

    /** Somebody acts for none of them any more. */
    static void leave(UUID populationId, UUID keeperId) {
        deleteKeepers("and keeper_id = ?2", populationId, keeperId);
    }

    private static void deleteKeepers(String which, UUID populationId, UUID id) {
        getEntityManager()
                .createNativeQuery("delete from demebook.collection_keeper where population_id = ?1 " + which)
                .setParameter(1, populationId)
                .setParameter(2, id)
                .executeUpdate();
    }

    CollectionView view() {
        return new CollectionView(id, label, region);
    }
}
