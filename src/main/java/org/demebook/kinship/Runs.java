package org.demebook.kinship;

/**
 * Walks over the nodes of a pedigree in their order, in runs that can be passed without looking: hidden males and late
 * births are runs of one. Forwards or backwards, once.
 */
final class Runs {
    private final int[] males;
    private final LateBirths late;

    /** Of the males and late births that are still to come, the next or, backwards, the last. */
    private int nextMale;

    private int nextLate;
    /** Where the run before ended, or backwards began. */
    private int edge;

    private final int end;

    /** The nodes of the run: from this one, to before that. */
    int from;

    int to;

    /** The index of the hidden male that is this run, or −1. */
    int male;

    Runs(Births births) {
        males = births.males().node();
        late = births.late();
        end = births.settled() + 1;
        edge = -1;
    }

    boolean next() {
        if (edge < 0) {
            edge = 1;
        }
        int stop = Math.min(placeOfMale(nextMale), placeOfLate(nextLate));
        if (edge < stop) {
            be(edge, stop, -1);
            edge = stop;
        } else if (nextLate < late.count() && late.before()[nextLate] == edge) {
            beLate(nextLate++);
        } else if (nextMale < males.length && males[nextMale] == edge) {
            be(edge, edge + 1, nextMale++);
            edge++;
        } else {
            return false;
        }
        return true;
    }

    boolean previous() {
        if (edge < 0) {
            edge = end;
            nextMale = males.length - 1;
            nextLate = late.count() - 1;
        }
        int stop = Math.max(nextMale < 0 ? 1 : males[nextMale] + 1, nextLate < 0 ? 1 : late.before()[nextLate]);
        if (stop < edge) {
            be(stop, edge, -1);
            edge = stop;
        } else if (nextLate >= 0 && late.before()[nextLate] == edge) {
            beLate(nextLate--);
        } else if (nextMale >= 0 && males[nextMale] + 1 == edge) {
            edge--;
            be(edge, edge + 1, nextMale--);
        } else {
            return false;
        }
        return true;
    }

    private int placeOfMale(int index) {
        return index < males.length ? males[index] : end;
    }

    private int placeOfLate(int index) {
        return index < late.count() ? late.before()[index] : end;
    }

    private void beLate(int index) {
        int node = late.node()[index];
        be(node, node + 1, -1);
    }

    private void be(int first, int behind, int itsMale) {
        from = first;
        to = behind;
        male = itsMale;
    }
}
