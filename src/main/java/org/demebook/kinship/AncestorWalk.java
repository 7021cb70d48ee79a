package org.demebook.kinship;

import java.util.Arrays;

/**
 * Finds the ancestors of a few nodes without looking at the rest of the pedigree. One climb at a time; made once and used
 * again, since it holds arrays as long as the pedigree.
 *
 * <p>A set of bits with a second level of bits over its words yields the highest member in a few steps; parents are
 * always lower than their young, so the set can grow while it is read. Late births are kept apart and visited at their
 * place.
 */
final class AncestorWalk {
    private final long[] bits;
    private final long[] wordsInUse;
    private int highestWordInUse = -1;
    private final long[] lateBits = new long[(LateBirths.MOST >> 6) + 1];

    /** By node of the last climb its place in the part, else 0. */
    private final int[] place;

    /** What the last climb found, youngest first. */
    private int[] found = new int[64];

    private int count;

    private Births births;
    private int settled;

    /** For these births, and others with arrays of the same length. */
    AncestorWalk(Births births) {
        int capacity = births.kind().length;
        bits = new long[(capacity >> 6) + 1];
        wordsInUse = new long[(bits.length >> 6) + 1];
        place = new int[capacity];
        this.births = births;
    }

    boolean fits(Births other) {
        return place.length >= other.kind().length;
    }

    /** These nodes and all their ancestors. What the climb before gave is good no longer. */
    Part climb(Births in, int[]... nodes) {
        begin(in);
        for (int[] some : nodes) {
            for (int node : some) {
                add(node);
            }
        }
        for (int i = births.late().count() - 1; i >= 0; i--) {
            int late = births.late().node()[i] - settled;
            if ((lateBits[late >> 6] & 1L << late) != 0) {
                climbTo(births.late().before()[i]);
                lateBits[late >> 6] &= ~(1L << late);
                visit(settled + late);
            }
        }
        climbTo(1);
        bits[0] = 0; // parents that are none
        wordsInUse[0] = 0;
        return Part.of(births, ascending(), place);
    }

    private void begin(Births in) {
        for (int i = 0; i < count; i++) {
            place[found[i]] = 0;
        }
        count = 0;
        births = in;
        settled = in.settled();
    }

    private void add(int node) {
        if (node > settled) {
            lateBits[node - settled >> 6] |= 1L << node - settled;
        } else {
            bits[node >> 6] |= 1L << node;
            wordsInUse[node >> 12] |= 1L << (node >> 6);
            highestWordInUse = Math.max(highestWordInUse, node >> 12);
        }
    }

    private void climbTo(int lowest) {
        for (; highestWordInUse >= lowest >> 12; highestWordInUse--) {
            int upper = highestWordInUse;
            while (wordsInUse[upper] != 0) {
                int word = (upper << 6) + 63 - Long.numberOfLeadingZeros(wordsInUse[upper]);
                while (bits[word] != 0) {
                    int node = (word << 6) + 63 - Long.numberOfLeadingZeros(bits[word]);
                    if (node < lowest) {
                        return;
                    }
                    bits[word] &= ~(1L << node);
                    visit(node);
                }
                wordsInUse[upper] &= ~(1L << word);
            }
        }
    }

    private void visit(int node) {
        if (count == found.length) {
            found = Arrays.copyOf(found, 2 * count);
        }
        found[count++] = node;
        add(births.sire(node));
        add(births.dam(node));
        if (births.kind()[node] == Births.HIDDEN) {
            var males = births.males();
            int i = males.indexOf(node);
            for (int c = males.start()[i]; c < males.start()[i + 1]; c++) {
                add(males.candidate()[c]);
            }
        }
    }

    private int[] ascending() {
        int[] nodes = new int[count];
        for (int i = 0; i < count; i++) {
            nodes[i] = found[count - 1 - i];
            place[nodes[i]] = i + 1;
        }
        return nodes;
    }
}
