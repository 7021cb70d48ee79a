package org.demebook.telling;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Set;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;

/**
 * Something to be said of an animal.
 *
 * @param readers ids of nodes; or {@link #EVERYBODY} alone: every node, also one that comes later, since it is public
 */
record Telling(Statement.Restricted says, Set<String> readers) {
    static final String EVERYBODY = "*";

    /** How what is told to everybody says so: what rests on nothing else is the same on every node. */
    private static final String MARK = "everybody";

    static void mark(ObjectNode detail) {
        detail.put(MARK, 1);
    }

    static boolean isToEverybody(Statement.Restricted says) {
        if (says instanceof AncestryTold told) {
            return told.detail().has(MARK);
        }
        return says instanceof HoldingTold told && told.detail().has(MARK);
    }

    Saying saying() {
        return new Saying(says, readers.contains(EVERYBODY) ? Optional.empty() : Optional.of(readers));
    }

    String digest() {
        return digest(says);
    }

    /** A record writes its components in order, and what is in the detail stands as it was put. */
    static String digest(Statement says) {
        try {
            var bytes =
                    MessageDigest.getInstance("SHA-256").digest(says.toString().getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
