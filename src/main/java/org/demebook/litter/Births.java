package org.demebook.litter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.demebook.wall.WholeRegister;

/** The births of dams, for the rooms that count from one to the next. */
@ApplicationScoped
public class Births {
    /** All births of a population, the first ones first. */
    @WholeRegister
    @Transactional
    public List<Birth> of(UUID populationId) {
        return births(Litter.list("populationId = ?1 order by bornLatest, id", populationId));
    }

    /** Those of some dams, the first ones first. */
    @Transactional
    public List<Birth> of(UUID populationId, Collection<UUID> damIds) {
        return damIds.isEmpty()
                ? List.of()
                : births(
                        Litter.list("populationId = ?1 and damId in ?2 order by bornLatest, id", populationId, damIds));
    }

    private static List<Birth> births(List<Litter> litters) {
        return litters.stream()
                .map(litter -> new Birth(litter.damId, litter.id, litter.born))
                .toList();
    }
}
