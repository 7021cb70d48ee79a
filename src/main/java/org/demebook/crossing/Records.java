package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.protocol.AnimalId;
import org.demebook.registry.AnimalRegistered;
import org.demebook.registry.Arrivals;

/** Where an animal of another node comes to stand in this register. */
@ApplicationScoped
class Records {
    private static final String USUAL_LABEL = "My animals";

    @Inject
    Keepers keepers;

    @Inject
    Arrivals arrivals;

    /** The keeper's first collection, opened where there is none. */
    UUID collectionOf(UUID population, UUID keeper) {
        var own = keepers.collectionIdsOf(population, keeper);
        return own.isEmpty()
                ? keepers.open(population, keeper, USUAL_LABEL, List.of(keeper)).id()
                : own.get(0);
    }

    /** @param described the animal under the id that it is given */
    UUID register(UUID population, UUID keeper, AnimalId animal, Function<UUID, AnimalRegistered> described) {
        // its own id between nodes, unless somebody chose one that is in use here
        var id = arrivals.has(population, animal.id()) ? Journal.newId() : animal.id();
        arrivals.register(population, keeper, described.apply(id));
        return id;
    }
}
