package org.demebook.protocol;

import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.demebook.merkle.MerkleTree;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.signing.KeyChain;

/** A journal as it is held here, the own one or another's: its tree, what it says, and its last checked head. */
final class Copy {
    final MerkleTree tree = new MerkleTree();
    final Ledger ledger;
    Optional<SignedCheckpoint> head = Optional.empty();

    /** Keys that are known beyond those that the entries here say. */
    Optional<KeyChain> laterKeys = Optional.empty();

    /** Entries that not every node may read, whether they had an effect or not. */
    final Set<Long> restricted = new HashSet<>();

    /** From this entry on others gave digests, and the journal's own node was not asked yet; 0: nothing of the kind. */
    long again;

    /** Nodes that cosigned a head of this journal, and of how many entries. */
    final Map<String, Long> witnesses = new TreeMap<>();

    Copy(Ledger ledger) {
        this.ledger = ledger;
    }

    String node() {
        return ledger.node;
    }

    long size() {
        return tree.size();
    }

    long headSize() {
        return head.map(signed -> signed.checkpoint().size()).orElse(0L);
    }

    Optional<KeyChain> keys() {
        var stated = ledger.keys();
        return laterKeys
                .filter(later -> stated.isEmpty() || !stated.get().extendsChain(later))
                .or(() -> stated);
    }
}
