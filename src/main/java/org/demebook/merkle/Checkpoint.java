package org.demebook.merkle;

/**
 * The head of a journal in the form of C2SP tlog-checkpoint, without extension lines; equal by content.
 *
 * @param origin which journal: one line of 1 to 255 printable ASCII characters without spaces
 * @param size how many entries, 0 to 2⁵³ − 1
 * @param root the root over them, 32 bytes
 */
public record Checkpoint(String origin, long size, byte[] root) {
    /** @throws org.demebook.signing.Malformed if one of them is out of its range */
    public Checkpoint {
        root = root.clone();
    }

    @Override
    public byte[] root() {
        return root.clone();
    }

    /** The three lines that are signed, each with its line feed. */
    public String body() {
        throw new UnsupportedOperationException();
    }
}
