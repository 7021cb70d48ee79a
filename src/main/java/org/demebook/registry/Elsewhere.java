package org.demebook.registry;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.jspecify.annotations.Nullable;

/**
 * What other nodes told of a population: its animals that live elsewhere, and the parents of those that came from there.
 *
 * @param version of {@link AnimalsElsewhere}
 * @param animals in any order; their parents are among them or among the records here. One that stands for a record here says so; what
 *     may only be computed with has a placeholder for a number
 * @param arrived by the id of their record here: the parents of animals that another node registered
 * @param possiblySame by the ids of records, here or elsewhere: those of which a node claims that they are one animal, and nobody
 *     agreed yet
 */
public record Elsewhere(
        long version, List<PedigreeRow> animals, Map<UUID, Descent> arrived, Map<UUID, UUID> possiblySame) {
    /**
     * @param origin unknown: as the record here has it
     * @param unshown told to be computed with
     */
    public record Descent(@Nullable UUID damId, Sire sire, Origin origin, boolean unshown) {}

    public static final Elsewhere NOTHING = new Elsewhere(0, List.of(), Map.of(), Map.of());

    public Elsewhere {
        animals = List.copyOf(animals);
        arrived = Map.copyOf(arrived);
        possiblySame = Map.copyOf(possiblySame);
    }

    public boolean isNothing() {
        return animals.isEmpty() && arrived.isEmpty();
    }
}
