package org.demebook.kinship;

import java.util.Arrays;

/**
 * The ancestors through which most genes of a pool came, each counted for what the ones before it do not explain. A
 * bottleneck since the founders shows here and not in the number of effective founders.
 *
 * <p>Source: Boichard, Maignel &amp; Verrier (1997), Genet. Sel. Evol. 29: 5–23 (from memory). A parent that nobody names
 * is never chosen: what came from it is counted with its young. Neither is a hidden male.
 *
 * @param ancestors rows, in the order of choice; founders, later ancestors and members of the pool alike; of twins the
 *     one with the smallest key
 * @param marginalShares of each, in (0, 1], falling
 * @param atLeast the effective number 1/Σp² if all that is unexplained came in shares as large as the last
 * @param atMost the same if it came in infinitely many shares; equal to {@code atLeast} once all is explained
 */
public record EffectiveAncestors(int[] ancestors, double[] marginalShares, double atLeast, double atMost) {
    /** Shares below this are rounding. */
    private static final double NOTHING = 1e-12;

    /** O(pool and its ancestors) for each ancestor chosen. */
    static EffectiveAncestors of(Births births, int[] pool, int limit) {
        var part = Part.ancestors(births, pool);
        var choice = new Choice(part.births(), part.within(pool));
        int[] ancestors = new int[Math.min(limit, part.births().nodes())];
        double[] shares = new double[ancestors.length];
        double unexplained = 1;
        double squares = 0;
        int count = 0;
        while (count < ancestors.length && unexplained > NOTHING) {
            int best = choice.best();
            if (best == Births.NONE) {
                break;
            }
            double share = choice.share(best);
            choice.choose(best);
            ancestors[count] = births.rowOfNode()[part.whole()[best]];
            shares[count++] = share;
            unexplained -= share;
            squares += share * share;
        }
        boolean all = unexplained <= NOTHING;
        double last = count == 0 ? 1 : shares[count - 1];
        return new EffectiveAncestors(
                Arrays.copyOf(ancestors, count),
                Arrays.copyOf(shares, count),
                1 / (squares + (all ? 0 : unexplained * last)),
                1 / squares);
    }

    /** What was chosen so far, and what that leaves to each ancestor. */
    private static final class Choice {
        private final Births births;
        private final int[] pool;
        private final boolean[] chosen;
        /** By node, what the pool holds of its genes by ways on which no chosen ancestor stands between. */
        private final double[] held;
        /** By node, the part of its genes that came from chosen ancestors. */
        private final double[] explained;

        Choice(Births births, int[] pool) {
            this.births = births;
            this.pool = pool;
            chosen = new boolean[births.nodes() + 1];
            held = births.vector();
            explained = births.vector();
            findHeld();
        }

        double share(int node) {
            return held[node] * (1 - explained[node]);
        }

        /** Of equals the first, which is no younger; none if none has a share left. */
        int best() {
            int best = Births.NONE;
            double largest = NOTHING;
            for (int node = 1; node <= births.nodes(); node++) {
                if (births.kind()[node] != Births.HIDDEN && share(node) > largest) {
                    best = node;
                    largest = share(node);
                }
            }
            return best;
        }

        void choose(int node) {
            chosen[node] = true;
            findHeld();
            findExplained();
        }

        private void findHeld() {
            Arrays.fill(held, 0);
            for (int node : pool) {
                held[node] += 1.0 / pool.length;
            }
            var males = births.males();
            int male = males.node().length - 1;
            for (int node = births.nodes(); node > 0; node--) {
                if (male >= 0 && males.node()[male] == node) {
                    males.spread(male--, held[node], held);
                } else if (!chosen[node]) {
                    held[births.sire(node)] += 0.5 * held[node];
                    held[births.dam(node)] += 0.5 * held[node];
                }
            }
        }

        private void findExplained() {
            var males = births.males();
            int male = 0;
            for (int node = 1; node <= births.nodes(); node++) {
                if (male < males.node().length && males.node()[male] == node) {
                    explained[node] = males.mean(male++, explained);
                } else {
                    explained[node] =
                            chosen[node] ? 1 : 0.5 * (explained[births.sire(node)] + explained[births.dam(node)]);
                }
            }
        }
    }
}
