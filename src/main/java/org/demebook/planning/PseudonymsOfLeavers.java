package org.demebook.planning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.Set;
import java.util.UUID;
import org.demebook.keeper.Leaving;

/** What was proposed to a keeper who left. */
@ApplicationScoped
class PseudonymsOfLeavers implements Leaving {
    @Inject
    EntityManager entities;

    @Override
    public void cleared(UUID populationId, UUID keeperId, Set<UUID> alone) {
        for (var collectionId : alone) {
            entities.createNativeQuery(
                            "delete from demebook.unnamed_partners where population_id = ?1 and collection_id = ?2")
                    .setParameter(1, populationId)
                    .setParameter(2, collectionId)
                    .executeUpdate();
        }
    }
}
