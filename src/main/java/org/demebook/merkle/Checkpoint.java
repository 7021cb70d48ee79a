package org.demebook.merkle;

import java.util.Arrays;
import java.util.Base64;
import java.util.Objects;
import java.util.regex.Pattern;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.Malformed;

/**
 * The head of a journal in the form of C2SP tlog-checkpoint, without extension lines; equal by content.
 *
 * @param origin which journal: one line of 1 to 255 printable ASCII characters without spaces
 * @param size how many entries, 0 to 2⁵³ − 1
 * @param root the root over them, 32 bytes
 */
public record Checkpoint(String origin, long size, byte[] root) {
    private static final Pattern ORIGIN = Pattern.compile("[!-~]{1,255}");

    /** @throws Malformed if one of them is out of its range, or the root of no entries not the hash of nothing */
    public Checkpoint {
        if (!ORIGIN.matcher(origin).matches()
                || size < 0
                || size > CanonicalJson.MOST_NUMBER
                || root.length != Hashes.BYTES
                || size == 0 && !Arrays.equals(root, Hashes.empty())) {
            throw new Malformed(
                    Malformed.Fault.NOT_A_CHECKPOINT,
                    "a checkpoint has an origin without spaces, a size, and a root of 32 bytes that fits it");
        }
        root = root.clone();
    }

    @Override
    public byte[] root() {
        return root.clone();
    }

    /** The three lines that are signed, each with its line feed. */
    public String body() {
        return origin + '\n' + size + '\n' + Base64.getEncoder().encodeToString(root) + '\n';
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Checkpoint that
                && origin.equals(that.origin)
                && size == that.size
                && Arrays.equals(root, that.root);
    }

    @Override
    public int hashCode() {
        return Objects.hash(origin, size, Arrays.hashCode(root));
    }

    @Override
    public String toString() {
        return "Checkpoint[" + origin + ", " + size + ", " + Base64.getEncoder().encodeToString(root) + "]";
    }
}
