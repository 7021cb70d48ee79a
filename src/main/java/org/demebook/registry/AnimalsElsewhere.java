package org.demebook.registry;

import java.util.UUID;

/** What other nodes told of animals that have no record here; a room that is told has a bean of this kind. */
public interface AnimalsElsewhere {
    /** Grows with everything that is told or withdrawn, while the server runs; 0 where nothing ever was. Costs no query. */
    long version(UUID populationId);

    /** What is told at that version, or at a later one, which it names. */
    Elsewhere of(UUID populationId);
}
