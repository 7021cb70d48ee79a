package org.demebook.federation;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Participant;

/**
 * What follows in a room from what nodes told each other. Every bean of this kind is called within the transaction that brought the
 * entries, the population held; what it throws takes all of it back, and a page that was taken in comes again: throw only for what
 * may be tried again.
 */
public interface Consequence {
    /**
     * Entries took effect, this node's own or others'.
     *
     * @param participant may write: what it writes is followed in its turn
     * @param entries in the order in which they took effect; of one node in that of its journal
     */
    void follow(UUID population, Participant participant, List<Entry> entries);

    /** The bytes of these entries are erased here: what was taken from them alone has to go. */
    default void forget(UUID population, Participant participant, String node, Collection<Long> seqs) {}
}
