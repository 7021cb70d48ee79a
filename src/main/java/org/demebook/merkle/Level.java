package org.demebook.merkle;

import java.util.Arrays;

/** Hashes one after the other in one array. */
final class Level {
    private byte[] hashes = new byte[8 * Hashes.BYTES];
    private int count;

    void add(byte[] hash) {
        if (count * Hashes.BYTES == hashes.length) {
            hashes = Arrays.copyOf(hashes, 2 * hashes.length);
        }
        System.arraycopy(hash, 0, hashes, count * Hashes.BYTES, Hashes.BYTES);
        count++;
    }

    byte[] get(int index) {
        return Arrays.copyOfRange(hashes, index * Hashes.BYTES, (index + 1) * Hashes.BYTES);
    }

    int count() {
        return count;
    }

    void truncate(int count) {
        this.count = count;
    }
}
