package org.demebook.protocol;

import java.util.List;
import java.util.Optional;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.signing.KeyChain;

/**
 * Entries of one journal, as a node gives them to another.
 *
 * @param after sequence number after which they begin
 * @param keys of the journal's node, as the giver knows them
 * @param head of the journal, at or beyond the last item
 * @param fromStart that the tree at {@code after} is a part of the head's
 * @param fromEnd the same of the tree after the last item
 * @param heads last heads of other journals that the giver holds
 * @param highest the highest sequence number of this journal that the giver has any sign of
 * @param alarms proven ones, for everybody to check
 */
public record FeedPage(
        String node,
        long after,
        KeyChain keys,
        SignedCheckpoint head,
        List<Item> items,
        List<byte[]> fromStart,
        List<byte[]> fromEnd,
        List<NodeHead> heads,
        long highest,
        List<Alarm> alarms) {
    /** An entry with its salt, or the digest of one that is not for the asker. */
    public record Item(Optional<String> entry, Optional<byte[]> salt, Optional<byte[]> digest) {}

    public record NodeHead(String node, KeyChain keys, SignedCheckpoint head) {}
}
