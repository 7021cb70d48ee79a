package org.demebook.protocol;

import java.nio.ByteBuffer;
import java.util.Base64;
import java.util.UUID;

/**
 * What a transfer is called: a UUID whose last 48 bits are the first 48 of the id of the node that gives. So no node offers under the
 * name of another's transfer, and a name alone says which offer is meant.
 */
final class TransferId {
    private static final long OF_THE_NODE = 0xffff_ffff_ffffL;
    private static final int OTHER_BITS = 16;

    private TransferId() {}

    /** @param any whose other bits make it one of its kind */
    static UUID of(UUID any, String giver) {
        return new UUID(any.getMostSignificantBits(), any.getLeastSignificantBits() & ~OF_THE_NODE | first48(giver));
    }

    static boolean isOf(UUID transfer, String giver) {
        return (transfer.getLeastSignificantBits() & OF_THE_NODE) == first48(giver);
    }

    private static long first48(String node) {
        return ByteBuffer.wrap(Base64.getUrlDecoder().decode(node)).getLong() >>> OTHER_BITS;
    }
}
