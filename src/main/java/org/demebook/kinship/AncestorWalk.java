package org.demebook.kinship;

import java.util.Arrays;

/**
 * Finds the ancestors of a few nodes without looking at the rest of the pedigree, and makes them a small pedigree of their
 * own. One climb at a time; made once and used again, since it holds arrays as long as the pedigree, and memory that was
 * just used is near.
 *
 * <p>A set of bits is read from the top down; parents are always lower than their young, so it can grow while it is read.
 * Words without a bit cost next to nothing beside the ancestors. Late births are kept apart and visited at their place.
 */
final class AncestorWalk {
    private final long[] bits;
    private int highestWord = -1;
    private final long[] lateBits;

    /** By node of the last climb its place in the part, else 0. */
    private final int[] place;

    /** What the last climb found, youngest first. */
    private int[] found = new int[64];

    private int count;

    private Part.Room room = new Part.Room(64);
    private double[] vector = new double[0];

    private Births births;
    private final int settled;

    /** For these births, and the same with more late ones. */
    AncestorWalk(Births births) {
        this.births = births;
        settled = births.settled();
        bits = new long[(settled >> 6) + 1];
        place = new int[births.kind().length];
        lateBits = new long[(place.length - settled >> 6) + 1];
    }

    /** These nodes and all their ancestors; good until {@link #done}, before which there is no other climb. */
    Part climb(Births in, int[]... nodes) {
        births = in;
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
        return part();
    }

    private void add(int node) {
        if (node > settled) {
            lateBits[node - settled >> 6] |= 1L << node - settled;
        } else {
            mark(node);
            highestWord = Math.max(highestWord, node >> 6);
        }
    }

    private void mark(int node) {
        bits[node >> 6] |= 1L << node;
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
        for (; highestWord >= lowest >> 6; highestWord--) {
            if (bits[highestWord] != 0 && !empty(highestWord, lowest)) {
                return;
            }
        }
    }

    /** Visits the nodes of a word; false if it came below the lowest to be visited. */
    private boolean empty(int word, int lowest) {
        long left = bits[word];
        bits[word] = 0;
        while (left != 0) {
            int node = (word << 6) + 63 - Long.numberOfLeadingZeros(left);
            if (node < lowest) {
                bits[word] = left;
                return false;
            }
            left &= ~(1L << node);
            visit(node);
            if (bits[word] != 0) { // parents may stand in the same word
                left |= bits[word];
                bits[word] = 0;
            }
        }
        return true;
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

    /** Forgets what was found. */
    void done() {
        for (int i = 0; i < count; i++) {
            place[found[i]] = 0;
        }
        count = 0;
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
