package org.demebook.ancestry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;
import org.demebook.registry.AnimalsElsewhere;
import org.demebook.registry.Elsewhere;
import org.demebook.registry.Elsewhere.Descent;
import org.demebook.registry.PedigreeRow;

/** What every room that is told of animals elsewhere knows, as one. */
@ApplicationScoped
class ToldElsewhere {
    @Inject
    @Any
    Instance<AnimalsElsewhere> rooms;

    /** Each only grows, and so does their sum. */
    long version(UUID populationId) {
        return rooms.stream().mapToLong(room -> room.version(populationId)).sum();
    }

    Elsewhere of(UUID populationId) {
        long version = 0;
        List<PedigreeRow> animals = new ArrayList<>();
        var arrived = new HashMap<UUID, Descent>();
        var possiblySame = new HashMap<UUID, UUID>();
        for (var room : rooms) {
            var told = room.of(populationId);
            version += told.version();
            animals.addAll(told.animals());
            arrived.putAll(told.arrived());
            possiblySame.putAll(told.possiblySame());
        }
        return new Elsewhere(version, animals, arrived, possiblySame);
    }
}
