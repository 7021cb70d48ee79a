package org.demebook.signing;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import org.demebook.signing.Malformed.Fault;

/**
 * Canonical JSON (RFC 8785) within I-JSON (RFC 7493), with whole numbers only: for one value there is exactly one sequence of
 * bytes.
 */
public final class CanonicalJson {
    /** Objects and arrays within one another, the outermost counted. */
    public static final int MOST_DEPTH = 32;

    /** The largest amount of a number: 2⁵³ − 1, up to which an ECMAScript number holds each exactly (RFC 7493, 2.2). */
    public static final long MOST_NUMBER = (1L << 53) - 1;

    private CanonicalJson() {}

    /**
     * Reads what a stranger sent. Time and memory O(bytes); nothing is built before the size has been looked at.
     *
     * @param mostBytes the largest size that is taken
     * @return a tree for which {@link #write} gives the very same bytes; numbers are ints where they fit, else longs
     * @throws Malformed for anything but an object in its canonical form
     */
    public static ObjectNode read(byte[] bytes, int mostBytes) {
        if (bytes.length > mostBytes) {
            throw new Malformed(Fault.TOO_LARGE, bytes.length + " bytes, at most " + mostBytes + " are taken");
        }
        var object = StrictReader.read(bytes);
        if (!Arrays.equals(write(object), bytes)) {
            throw new Malformed(
                    Fault.NOT_CANONICAL,
                    "it means what it says, but RFC 8785 writes it in other bytes: sign and send those");
        }
        return object;
    }

    /**
     * The canonical form. O(bytes), apart from the sorting of names.
     *
     * @throws IllegalArgumentException for what has no canonical form here: floats, numbers beyond ±{@link #MOST_NUMBER}, lone
     *     surrogates, noncharacters, more than {@link #MOST_DEPTH} levels
     */
    public static byte[] write(ObjectNode node) {
        return CanonicalWriter.write(node);
    }
}
