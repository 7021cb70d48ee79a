package org.demebook.kinship;

import java.util.Arrays;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;

/**
 * Computes every node's relationship with itself, which is 1 + F where all ancestors are known or count as founders.
 *
 * <p>Source: Sargolzaei, Iwaisaki &amp; Colleau (2005), J. Anim. Breed. Genet. 122: 325–331 (from memory): by sire, up to
 * his ancestors and down to all dams he had young with, among breeding animals only. Some sires go side by side, chosen so
 * that they have most ancestors in common; the rules for hidden males and fatherless young are added.
 */
final class Inbreeding {
    /** Fewer sires than this are not worth several threads. */
    private static final int WORTH_SHARING = 4 * Factor.WIDTH;

    private final Relationship relationship;
    private final Births births;
    private final Breeders breeders;
    private final double[] self;

    Inbreeding(Relationship relationship) {
        this.relationship = relationship;
        births = relationship.births();
        breeders = relationship.breeders();
        self = relationship.self;
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

    void computeAll() {
        new BySire().compute();
    }

    /** All that follows from the parents' own; the relationship of two parents was added before. */
    private void computeOwn(int node) {
        int dam = births.dam(node);
        double known = relationship.knownOf(node);
        switch (births.kind()[node]) {
            case Births.FOUNDER, Births.UNKNOWN_PARENTS -> {
                self[node] = known * (1 + births.extra().of(node));
                relationship.setOwn(node, self[node]);
            }
            case Births.YOUNG -> {
                if (!births.hasTwoParents(node)) {
                    self[node] = known;
                }
                relationship.setOwn(node, known - 0.25 * (self[births.sire(node)] + self[dam]));
            }
            case Births.PARTHENOGEN -> {
                double keeps = births.extra().of(node);
                self[node] = keeps * self[dam] + 2 * (1 - keeps) * relationship.knownOf(dam);
                relationship.setOwn(node, self[node] - self[dam]);
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
        Arrays.setAll(candidates, c -> breeders.of(candidates[c]));
        var walk = relationship.freeWalk();
        var part = walk.climb(breeders.births(), candidates);
        double[] v = part.births().vector();
        for (int c = 0; c < candidates.length; c++) {
            v[part.place()[candidates[c]]] = males.share()[males.start()[i] + c];
        }
        relationship.setOwn(
                node,
                self[node] - relationship.ofBreeders().of(part, walk.own()).multiply(v));
        relationship.release(walk);
    }

    private void setSelf(int young, double ofParents) {
        self[young] = relationship.knownOf(young) + 0.5 * ofParents;
    }

    /** The young of two parents of a whole pedigree, of which some may be computed already. */
    private final class BySire {
        /** Wide, so let go when all is done. */
        private final Queue<AncestorWalk> walks = new ConcurrentLinkedQueue<>();

        /** The young to be computed, grouped by sire: those of a breeder are from its start to that of the next. */
        private final int[] young;

        private final int[] start = new int[breeders.births().nodes() + 2];

        BySire() {
            for (int node = 1; node <= births.nodes(); node++) {
                if (isToCompute(node)) {
                    start[sire(node) + 1]++;
                }
            }
            for (int sire = 1; sire < start.length; sire++) {
                start[sire] += start[sire - 1];
            }
            young = new int[start[start.length - 1]];
            int[] next = start.clone();
            for (int node = 1; node <= births.nodes(); node++) {
                if (isToCompute(node)) {
                    young[next[sire(node)]++] = node;
                }
            }
        }

        private boolean isToCompute(int node) {
            return births.hasTwoParents(node) && Double.isNaN(self[node]);
        }

        private int sire(int node) {
            return breeders.of(births.sire(node));
        }

        private int dam(int node) {
            return breeders.of(births.dam(node));
        }

        /** Block by block of nodes none of which is another's parent, so that its sires can be taken side by side. */
        void compute() {
            int[] line = damLines();
            int[] sires = new int[breeders.births().nodes()];
            int from = 1;
            while (from <= births.nodes()) {
                int to = endOfBlock(from);
                int count = 0;
                for (int node = from; node < to; node++) {
                    computeOwn(node);
                    int breeder = breeders.of(node);
                    if (start[breeder] < start[breeder + 1]) {
                        sires[count++] = breeder;
                    }
                }
                computeYoung(BirthOrder.sorted(Arrays.copyOf(sires, count), sire -> line[sire]));
                from = to;
            }
        }

        /** By breeder the founder from dam to dam up. Sires of one line have most ancestors in common. */
        private int[] damLines() {
            int[] line = new int[breeders.births().nodes() + 1];
            for (int node = 1; node < line.length; node++) {
                int dam = breeders.births().dam(node);
                line[node] = dam == Births.NONE ? node : line[dam];
            }
            return line;
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

        private void computeYoung(int[] sires) {
            var groups = IntStream.range(0, (sires.length + Factor.WIDTH - 1) / Factor.WIDTH);
            (sires.length < WORTH_SHARING ? groups : groups.parallel()).forEach(group -> {
                int from = group * Factor.WIDTH;
                computeYoungOf(Arrays.copyOfRange(sires, from, Math.min(from + Factor.WIDTH, sires.length)));
            });
        }

        private void computeYoungOf(int[] sires) {
            var polled = walks.poll();
            var walk = polled == null ? new AncestorWalk(breeders.births()) : polled;
            var part = walk.climb(breeders.births(), sires, damsOfYoung(sires));
            double[] v = walk.vector((part.births().nodes() + 1) * Factor.WIDTH);
            relationship.ofBreeders().of(part, walk.own()).multiply(part.within(sires), 0, sires.length, v);
            for (int c = 0; c < sires.length; c++) {
                for (int i = start[sires[c]]; i < start[sires[c] + 1]; i++) {
                    setSelf(young[i], v[part.place()[dam(young[i])] * Factor.WIDTH + c]);
                }
            }
            walk.done();
            walks.add(walk);
        }

        private int[] damsOfYoung(int[] sires) {
            int count = 0;
            for (int sire : sires) {
                count += start[sire + 1] - start[sire];
            }
            int[] dams = new int[count];
            for (int sire : sires) {
                for (int i = start[sire]; i < start[sire + 1]; i++) {
                    dams[--count] = dam(young[i]);
                }
            }
            return dams;
        }
    }
}
