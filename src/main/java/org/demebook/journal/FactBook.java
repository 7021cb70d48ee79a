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
}
