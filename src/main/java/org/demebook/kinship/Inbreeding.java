package org.demebook.kinship;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Computes every node's relationship with itself, which is 1 + F where all ancestors are known or count as founders.
 *
 * <p>Source: Sargolzaei, Iwaisaki &amp; Colleau (2005), J. Anim. Breed. Genet. 122: 325–331 (from memory): by sire, up to
 * his ancestors and down to all dams he had young with. Eight sires go side by side, neighbours in the order, since they
 * have most ancestors in common; the rules for hidden males and fatherless young are added.
 */
final class Inbreeding {
    /** Fewer sires than this are not worth several threads. */
    private static final int SIDE_BY_SIDE = 4 * Factor.WIDTH;

    private final Relationship relationship;
    private final Births births;
    private final double[] self;
    private final double[] own;

    Inbreeding(Relationship relationship) {
        this.relationship = relationship;
        births = relationship.births();
        self = relationship.self;
        own = relationship.own;
    }

    /** Block by block of nodes none of which is another's parent, so that its sires can be taken side by side. */
    void compute() {
        int[] start = new int[births.nodes() + 2];
        int[] young = youngBySire(start);
        int[] sires = new int[births.nodes()];
        int from = 1;
        while (from <= births.nodes()) {
            int to = endOfBlock(from);
            int count = 0;
            for (int node = from; node < to; node++) {
                computeOwn(node);
                if (start[node] < start[node + 1]) {
                    sires[count++] = node;
                }
            }
            computeYoung(Arrays.copyOf(sires, count), young, start);
            from = to;
        }
    }

    private boolean isToCompute(int node) {
        return births.hasTwoParents(node) && Double.isNaN(self[node]);
    }

    /** The young of two parents to be computed, grouped by sire; those of a node are from its start to that of the next. */
    private int[] youngBySire(int[] start) {
        for (int node = 1; node <= births.nodes(); node++) {
            if (isToCompute(node)) {
                start[births.sire(node) + 1]++;
            }
        }
        for (int node = 1; node < start.length; node++) {
            start[node] += start[node - 1];
        }
        int[] young = new int[start[births.nodes() + 1]];
        int[] next = start.clone();
        for (int node = 1; node <= births.nodes(); node++) {
            if (isToCompute(node)) {
                young[next[births.sire(node)]++] = node;
            }
        }
        return young;
    }

    private int endOfBlock(int from) {
        int to = from + 1;
        while (to <= births.nodes() && youngestParent(to) < from) {
            to++;
        }
        return to;
    }

    private int youngestParent(int node) {
        if (births.kind()[node] == Births.HIDDEN) {
            var males = births.males();
            int last = males.start()[males.indexOf(node) + 1] - 1;
            return last < males.start()[males.indexOf(node)] ? Births.NONE : males.candidate()[last];
        }
        return Math.max(births.sire(node), births.dam(node));
    }

    /** All that follows from the parents' own; the relationship of two parents was added with their sire. */
    private void computeOwn(int node) {
        int dam = births.dam(node);
        double known = relationship.knownOf(node);
        switch (births.kind()[node]) {
            case Births.FOUNDER, Births.UNKNOWN_PARENTS -> {
                self[node] = known * (1 + births.extra().of(node));
                own[node] = self[node];
            }
            case Births.YOUNG -> {
                if (!births.hasTwoParents(node)) {
                    self[node] = known;
                }
                own[node] = known - 0.25 * (self[births.sire(node)] + self[dam]);
            }
            case Births.PARTHENOGEN -> {
                double keeps = births.extra().of(node);
                self[node] = keeps * self[dam] + 2 * (1 - keeps) * relationship.knownOf(dam);
                own[node] = self[node] - self[dam];
            }
            case Births.HIDDEN -> computeMale(node);
            default -> throw new AssertionError(births.kind()[node]);
        }
    }

    private void computeMale(int node) {
        var males = births.males();
        int i = males.indexOf(node);
        self[node] = males.mean(i, self) + relationship.knownOfStranger(males.remainder()[i]);
        int[] candidates = Arrays.copyOfRange(males.candidate(), males.start()[i], males.start()[i + 1]);
        own[node] = self[node]
                - relationship.amongAncestors(
                        (part, factor) -> {
                            double[] v = part.births().vector();
                            for (int c = 0; c < candidates.length; c++) {
                                v[part.place()[candidates[c]]] = males.share()[males.start()[i] + c];
                            }
                            return factor.square(v);
                        },
                        candidates);
    }

    private void computeYoung(int[] sires, int[] young, int[] start) {
        var groups = IntStream.range(0, (sires.length + Factor.WIDTH - 1) / Factor.WIDTH);
        (sires.length < SIDE_BY_SIDE ? groups : groups.parallel())
                .forEach(group -> computeYoung(
                        Arrays.copyOfRange(
                                sires, group * Factor.WIDTH, Math.min((group + 1) * Factor.WIDTH, sires.length)),
                        young,
                        start,
                        group));
    }

    private void computeYoung(int[] sires, int[] young, int[] start, int group) {
        int count = 0;
        for (int sire : sires) {
            count += start[sire + 1] - start[sire];
        }
        int[] dams = new int[count];
        for (int sire : sires) {
            for (int i = start[sire]; i < start[sire + 1]; i++) {
                dams[--count] = births.dam(young[i]);
            }
        }
        relationship.amongAncestors(
                (part, factor) -> {
                    double[] v = factor.columns(part.within(sires), 0, sires.length);
                    for (int c = 0; c < sires.length; c++) {
                        for (int i = start[sires[c]]; i < start[sires[c] + 1]; i++) {
                            int dam = part.place()[births.dam(young[i])];
                            setSelf(young[i], v[dam * Factor.WIDTH + c]);
                        }
                    }
                    return 0;
                },
                sires,
                dams);
    }

    /** Births behind those that are computed, one by one. */
    void computeFrom(int first) {
        for (int node = first; node <= births.nodes(); node++) {
            if (births.hasTwoParents(node)) {
                setSelf(node, relationship.betweenParents(births.sire(node), births.dam(node)));
            }
            computeOwn(node);
        }
    }

    private void setSelf(int young, double ofParents) {
        self[young] = relationship.knownOf(young) + 0.5 * ofParents;
    }
}
