package org.demebook.journal;

import java.util.Set;

/** A room's part in the journal: which facts are its own, and what they do to its rows. */
public interface FactBook {
    Set<Class<? extends Fact>> facts();

    /**
     * Changes the rows as the fact says: the only code of a room that writes them. Decides nothing; what was recorded
     * is applied as it stands.
     */
    void apply(Entry entry, Fact fact);

    /**
     * Takes the words of a fact out of the rows that still show them, so that these are as a replay without the words would make
     * them. Every room whose facts hold {@link Words} says how.
     *
     * @return false where the words have to stay, since they are not the leaver's alone; then nothing was changed
     */
    default boolean forget(Forgotten forgotten) {
        throw new IllegalStateException(
                "nobody says how to take the words out of " + forgotten.said().getClass());
    }
}
