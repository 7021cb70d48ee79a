package org.demebook.kinship;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;

/**
 * Every node's relationship with itself, which is 1 + F where all ancestors are known or count as founders.
 *
 * <p>Source: Sargolzaei, Iwaisaki &amp; Colleau (2005), J. Anim. Breed. Genet. 122: 325–331 (from memory): one sire at a
 * time, up to his ancestors and down to all dams he had young with. Walks stay among breeding animals; the rules for
 * hidden males and fatherless young are added.
 */
final class Inbreeding {
    /** Fewer sires than this are not worth several threads. */
    private static final int SIDE_BY_SIDE = 64;

    private final Births births;
    private final double[] known;
    private final boolean strangersAreFounders;

    final double[] self;
    final Factor factor;
    final Part breeders;
    final Factor ofBreeders;

    private final Queue<AncestorWalk> walks = new ConcurrentLinkedQueue<>();

    /**
     * @param known by node, the part of its genome that counts
     * @param strangersAreFounders whether the chance of an unrelated sire counts as known
     * @param self by node what is computed already, NaN where nothing is; kept and filled
     */
    Inbreeding(Births births, double[] known, boolean strangersAreFounders, double[] self) {
        this.births = births;
        this.known = known;
        this.strangersAreFounders = strangersAreFounders;
        this.self = self;
        factor = new Factor(births, births.vector(), births.founderKinship().ofKnown(known));
        breeders = Part.breeders(births);
        ofBreeders = factor.of(breeders);
        computeBreeders();
        computeOthers();
    }

    /** Block by block of nodes none of which is another's parent, so that its sires can be taken side by side. */
    private void computeBreeders() {
        int nodes = breeders.births().nodes();
        int[] start = new int[nodes + 1];
        int[] young = youngBySire(start);
        int from = 0;
        while (from < nodes) {
            int to = endOfBlock(from);
            for (int breeder = from; breeder < to; breeder++) {
                computeOwn(breeders.whole()[breeder]);
                ofBreeders.own()[breeder] = factor.own()[breeders.whole()[breeder]];
            }
            var sires = IntStream.range(from, to).filter(sire -> start[sire] < start[sire + 1]);
            (to - from < SIDE_BY_SIDE ? sires : sires.parallel())
                    .forEach(sire -> computeYoung(sire, young, start[sire], start[sire + 1]));
            from = to;
        }
    }

    private boolean isToCompute(int node) {
        return hasTwoParents(node) && Double.isNaN(self[node]);
    }

    /** The young of two parents to be computed, grouped by sire; those of a breeder are from its start to that of the next. */
    private int[] youngBySire(int[] start) {
        int nodes = breeders.births().nodes();
        for (int node = 0; node < births.nodes(); node++) {
            if (isToCompute(node)) {
                start[breeders.part()[births.sire()[node]] + 1]++;
            }
        }
        for (int breeder = 0; breeder < nodes; breeder++) {
            start[breeder + 1] += start[breeder];
        }
        int[] young = new int[start[nodes]];
        int[] next = start.clone();
        for (int node = 0; node < births.nodes(); node++) {
            if (isToCompute(node)) {
                young[next[breeders.part()[births.sire()[node]]]++] = node;
            }
        }
        return young;
    }

    private boolean hasTwoParents(int node) {
        return births.kind()[node] == Births.YOUNG
                && births.sire()[node] != births.none()
                && births.dam()[node] != births.none();
    }

    private int endOfBlock(int from) {
        int to = from + 1;
        while (to < breeders.births().nodes() && youngestParent(to) < from) {
            to++;
        }
        return to;
    }

    private int youngestParent(int breeder) {
        var part = breeders.births();
        if (part.kind()[breeder] == Births.HIDDEN) {
            var males = part.males();
            int i = males.indexOf(breeder);
            return males.start()[i + 1] > males.start()[i] ? males.candidate()[males.start()[i + 1] - 1] : -1;
        }
        int sire = part.sire()[breeder] == part.none() ? -1 : part.sire()[breeder];
        int dam = part.dam()[breeder] == part.none() ? -1 : part.dam()[breeder];
        return Math.max(sire, dam);
    }

    private void computeOthers() {
        for (int node = 0; node < births.nodes(); node++) {
            if (breeders.part()[node] < 0) {
                computeOwn(node);
            }
        }
    }

    /** All that follows from the parents' own; the relationship of two parents was added with their sire. */
    private void computeOwn(int node) {
        int dam = births.dam()[node];
        switch (births.kind()[node]) {
            case Births.FOUNDER, Births.UNKNOWN_PARENTS -> {
                self[node] = known[node] * (1 + births.extra().of(node));
                factor.own()[node] = self[node];
            }
            case Births.YOUNG -> {
                if (!hasTwoParents(node)) {
                    self[node] = known[node];
                }
                factor.own()[node] = known[node] - 0.25 * (self[births.sire()[node]] + self[dam]);
            }
            case Births.PARTHENOGEN -> {
                double keeps = births.extra().of(node);
                self[node] = keeps * self[dam] + 2 * (1 - keeps) * known[dam];
                factor.own()[node] = self[node] - self[dam];
            }
            case Births.HIDDEN -> computeMale(node);
            default -> throw new AssertionError(births.kind()[node]);
        }
    }

    private void computeMale(int node) {
        var males = births.males();
        int i = males.indexOf(node);
        self[node] = males.mean(i, self) + (strangersAreFounders ? males.remainder()[i] : 0);
        var walk = freeWalk();
        for (int c = males.start()[i]; c < males.start()[i + 1]; c++) {
            walk.add(breeders.part()[males.candidate()[c]], males.share()[c]);
        }
        walk.climb();
        walk.spread();
        factor.own()[node] = self[node] - ofBreeders.square(walk);
        release(walk);
    }

    private void computeYoung(int sire, int[] young, int from, int to) {
        var up = freeWalk();
        up.add(sire, 1);
        up.climb();
        up.spread();
        ofBreeders.weigh(up);
        var down = freeWalk();
        for (int i = from; i < to; i++) {
            down.add(breeders.part()[births.dam()[young[i]]]);
        }
        down.climb();
        down.descend(up.genes);
        for (int i = from; i < to; i++) {
            self[young[i]] = known[young[i]] + 0.5 * down.genes[breeders.part()[births.dam()[young[i]]]];
        }
        release(down);
        release(up);
    }

    /** A walk among breeding animals. */
    AncestorWalk freeWalk() {
        var walk = walks.poll();
        return walk == null ? new AncestorWalk(breeders.births()) : walk;
    }

    void release(AncestorWalk walk) {
        ofBreeders.clear(walk);
        walks.add(walk);
    }
}
