package org.demebook.keeper;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;

/** What a room has to do when a keeper leaves a population and takes their own out of it; all rooms that know something are asked. */
public interface Leaving {
    /**
     * What has to come to its end first: each a sentence that says what to do.
     *
     * @param alone the collections that nobody but the asker acts for
     */
    default List<String> inTheWay(Standing by, Set<UUID> alone) {
        return List.of();
    }

    /**
     * Takes rows out that are theirs; called while the fact that they left is applied, and so again by a replay.
     *
     * @param shared collections of theirs that others act for too
     */
    default void left(Entry entry, UUID keeperId, Set<UUID> shared) {}

    /**
     * Takes out what is in no journal; called once, after everything else.
     *
     * @param alone collections that nobody acts for any more
     */
    default void cleared(UUID populationId, UUID keeperId, Set<UUID> alone) {}

    /** Takes out what the node itself has of them; called once, when their account goes. */
    default void accountGoes(UUID keeperId) {}
}
