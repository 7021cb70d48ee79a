package org.demebook.transfer;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/** Stands for the breeding records: the females that a test says are gravid, and no other. */
@ApplicationScoped
class ToldGravid implements GravidFemales {
    static final Set<UUID> GRAVID = ConcurrentHashMap.newKeySet();

    @Override
    public boolean isGravid(UUID populationId, UUID animalId) {
        return GRAVID.contains(animalId);
    }
}
