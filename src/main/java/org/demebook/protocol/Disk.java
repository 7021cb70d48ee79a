package org.demebook.protocol;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/** Where a participant keeps what it must not lose. All calls but {@link #version} stand within {@link #change}. */
public interface Disk {
    /**
     * Runs the work alone, in one transaction: all of it is durable when this returns, or nothing of it is kept and this
     * throws.
     */
    <T> T change(Supplier<T> work);

    /** Grows with every change that wrote something; whoever folded an earlier one folds anew. */
    long version();

    /** Nodes of whose journals there are entries, the own one included. */
    Set<String> journals();

    /** In order of their sequence numbers. */
    List<Kept> entries(String node, long after, int most);

    /** @param kept with the sequence number after the last one */
    void append(String node, Kept kept);

    /** Keeps bytes and salt of an entry of which there was the digest alone. */
    void fill(String node, Kept kept);

    /** From which entry on the journal's own node is still to be asked for what others gave as digests; 0: nowhere. */
    long again(String node);

    void keepAgain(String node, long seq);

    /** Forgets bytes and salt of these entries; the leaves stay. */
    void erase(String node, Collection<Long> seqs);

    /** The last checked head of a journal, with cosignatures. */
    Optional<String> head(String node);

    void keepHead(String node, String signedCheckpoint);

    /** A head that somebody showed and that lies beyond the copy here; to be held against it once that is there. */
    List<String> unchecked(String node);

    void keepUnchecked(String node, List<String> signedCheckpoints);

    List<Alarm> alarms();

    /** Once for each id. */
    void raise(Alarm alarm);
}
