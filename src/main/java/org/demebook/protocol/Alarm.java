package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.Optional;

/**
 * Something that an honest and healthy node does not do.
 *
 * @param id the same for the same thing, whoever noticed it: SHA-256 of kind, accused and evidence, base64url
 * @param accused the node whose signature stands under it, where that is proven; else the one that delivered it
 * @param evidence what shows it to anybody; empty where there is no more than this node's word
 * @param sentence for an administrator
 */
public record Alarm(
        String id, Kind kind, String accused, Optional<ObjectNode> evidence, String sentence, Instant noticedAt) {
    /** What it is. Whether it accuses somebody for good is told by the evidence, not by the kind. */
    public enum Kind {
        /** Two signed heads of one journal that cannot both be true. */
        EQUIVOCATION,
        /** Two signed entries with one sequence number. */
        FORKED_ENTRY,
        /** Two entries of one node that name different heirs of a gone one. */
        TWO_HEIRS,
        /** Two key chains of one node that part ways. */
        FORKED_KEYS,
        /** A journal became shorter than it was: a restore from a backup, or worse. */
        ROLLED_BACK,
        /** A head whose promise its entries do not keep. */
        INCONSISTENT_HEAD,
        /** Entries are promised by a head and not given. */
        WITHHELD,
        /** A signature that does not fit. */
        FORGED_SIGNATURE,
        /** Signed with a key that is not, not yet or no longer the node's. */
        WRONG_KEY,
        /** Out of order, left out, or of another journal. */
        BROKEN_SEQUENCE,
        /** Bytes that are in no accepted form. */
        MALFORMED,
        OVERSIZE,
        /** A statement that is not this node's to make. */
        FOREIGN_AUTHORITY,
        /** An animal given or told of by a node that does not hold it. */
        NOT_ITS_HOLDER,
        /** A proof that was used before, or for something else. */
        REPLAYED,
        /** A carried proof that proves nothing. */
        FALSE_PROOF,
        /** Somebody who takes no part in this population. */
        NOT_A_MEMBER
    }

    public boolean isProven() {
        return evidence.isPresent();
    }
}
