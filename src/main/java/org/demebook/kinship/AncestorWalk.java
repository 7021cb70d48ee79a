package org.demebook.kinship;

import java.util.Arrays;

/**
 * Finds the ancestors of a few nodes without looking at the rest of the pedigree, and makes them a small pedigree of their
 * own. One climb at a time; made once and used again, since it holds arrays as long as the pedigree, and memory that was
 * just used is near.
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

    private Part.Room room = new Part.Room(64);
    private double[] vector = new double[0];

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
                visitLate(settled + late);
            }
        }
        climbTo(1);
        bits[0] = 0; // parents that are none
        wordsInUse[0] = 0;
        return part();
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
            mark(node);
            highestWordInUse = Math.max(highestWordInUse, node >> 12);
        }
    }

    private void mark(int node) {
        bits[node >> 6] |= 1L << node;
        wordsInUse[node >> 12] |= 1L << (node >> 6);
    }

    private void visitLate(int node) {
        find(node);
        add(births.sire(node));
        add(births.dam(node));
    }

    private void find(int node) {
        if (count == found.length) {
            found = Arrays.copyOf(found, 2 * count);
        }
        found[count++] = node;
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

    /** Parents of one that is not late are not late either. */
    private void visit(int node) {
        find(node);
        int sire = births.sire(node);
        int dam = births.dam(node);
        mark(sire);
        mark(dam);
        if (dam == Births.NONE && births.kind()[node] == Births.HIDDEN) {
            var males = births.males();
            int i = males.indexOf(node);
            for (int c = males.start()[i]; c < males.start()[i + 1]; c++) {
                mark(males.candidate()[c]);
            }
        }
    }

    private Part part() {
        if (count >= room.whole().length) {
            room = new Part.Room(count + count / 2 + 1);
        }
        int[] whole = room.whole();
        for (int i = 0; i < count; i++) {
            whole[i + 1] = found[count - 1 - i];
        }
        return Part.of(births, count, room, place);
    }

    /** Takes a vector of the part. */
    double[] own() {
        return room.own();
    }

    /** A vector of zeros, good until the next is asked for. */
    double[] vector(int length) {
        if (length > vector.length) {
            vector = new double[length + length / 2];
        } else {
            Arrays.fill(vector, 0, length, 0);
        }
        return vector;
    }
}
