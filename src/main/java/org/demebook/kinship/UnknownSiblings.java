package org.demebook.kinship;

import org.demebook.kinship.Births.FounderKinship;
import org.demebook.kinship.Births.HiddenMales;
import org.demebook.kinship.Births.Sparse;

/**
 * The births of a pedigree with every unknown parent, and every stranger that a sire may be, a young of one unrelated pair:
 * what {@link Convention#UNKNOWN_FULL_SIBS} computes with. The pair and those of their young that are no animals of the
 * pedigree stand before all others, so nodes move up.
 */
final class UnknownSiblings {
    private static final int SIRE = 1;
    private static final int DAM = 2;

    private final Births births;
    private final int shift;
    private final byte[] kind;
    private final int[] parents;

    /** The last of the pair's young that is no animal. */
    private int sibling = DAM;

    /** @param births without late ones */
    private UnknownSiblings(Births births) {
        this.births = births;
        int unnamed = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            unnamed += births.hasUnnamedParent(node) ? 1 : 0;
        }
        for (double remainder : births.males().remainder()) {
            unnamed += remainder > 0 ? 1 : 0;
        }
        shift = DAM + unnamed;
        kind = new byte[births.nodes() + 1 + shift];
        parents = new int[2 * kind.length];
        kind[SIRE] = Births.FOUNDER;
        kind[DAM] = Births.FOUNDER;
    }

    static Births of(Births births) {
        return new UnknownSiblings(births).births();
    }

    private Births births() {
        for (int node = 1; node <= births.nodes(); node++) {
            move(node);
        }
        var related = births.founderKinship();
        for (int[] nodes : new int[][] {related.a(), related.b()}) {
            for (int node : nodes) {
                bear(node + shift, births.kind()[node], Births.NONE, Births.NONE);
            }
        }
        var males = males();
        return new Births(
                births.nodes() + shift,
                births.rows(),
                kind,
                parents,
                males,
                new Sparse(
                        Births.shifted(births.extra().node(), shift),
                        births.extra().value()),
                Births.shifted(births.nodeOfRow(), shift),
                new int[0],
                new int[0],
                new FounderKinship(
                        Births.shifted(related.a(), shift), Births.shifted(related.b(), shift), related.kinship()),
                LateBirths.NONE);
    }

    private void move(int node) {
        int moved = node + shift;
        if (births.kind()[node] == Births.UNKNOWN_PARENTS) {
            bear(moved, Births.YOUNG, SIRE, DAM);
        } else if (births.hasUnnamedParent(node)) {
            int known = Math.max(births.sire(node), births.dam(node));
            bear(moved, Births.YOUNG, anotherSibling(), known + shift);
        } else {
            bear(
                    moved,
                    births.kind()[node],
                    Births.shifted(births.sire(node), shift),
                    Births.shifted(births.dam(node), shift));
        }
    }

    private int anotherSibling() {
        bear(++sibling, Births.YOUNG, SIRE, DAM);
        return sibling;
    }

    private void bear(int node, byte itsKind, int sire, int dam) {
        kind[node] = itsKind;
        parents[2 * node] = sire;
        parents[2 * node + 1] = dam;
    }

    /** A stranger is the first of a male's candidates, who stand in order. */
    private HiddenMales males() {
        var males = births.males();
        int[] start = new int[males.node().length + 1];
        int[] candidate = new int[males.candidate().length + males.node().length];
        double[] share = new double[candidate.length];
        for (int i = 0; i < males.node().length; i++) {
            int at = start[i];
            if (males.remainder()[i] > 0) {
                candidate[at] = anotherSibling();
                share[at++] = males.remainder()[i];
            }
            for (int c = males.start()[i]; c < males.start()[i + 1]; c++) {
                candidate[at] = males.candidate()[c] + shift;
                share[at++] = males.share()[c];
            }
            start[i + 1] = at;
        }
        return new HiddenMales(
                Births.shifted(males.node(), shift), start, candidate, share, new double[males.node().length]);
    }
}
