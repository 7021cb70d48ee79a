package org.demebook.kinship;

import java.util.Arrays;

/**
 * Where the genes of an animal or of a pool come from. Each parent that nobody names, and each chance that a sire was a
 * stranger, counts as a founder of its own. Under {@link Convention#KNOWN_ONLY} only stated founders are listed, and
 * their shares are rescaled to add up to 1.
 *
 * @param founders rows with a share above 0, ascending; of twins the one with the smallest key
 * @param shares expected share of the genes, in (0, 1], by place in {@code founders}
 * @param unnamed together the share of founders that are no animals of the pedigree; all shares and this add up to 1
 * @param effectiveFounders the number of founders that would give the same evenness if all had equal shares: 1/Σp²,
 *     Lacy (1989), Zoo Biol. 8: 111–123 (from memory); {@code NaN} where no gene traces to a founder that counts
 */
public record FounderContributions(int[] founders, double[] shares, double unnamed, double effectiveFounders) {

    /** @param genes by node, adding up to 1 over those whose founders are asked for; is used up */
    static FounderContributions of(Births births, double[] genes, Convention convention) {
        births.up(genes);
        boolean all = convention != Convention.KNOWN_ONLY;
        double[] unnamed = all ? unnamed(births, genes) : new double[0];
        double[] named = new double[births.nodes()];
        double[] byRow = new double[births.rows()];
        int count = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            byte kind = births.kind()[node];
            if (kind == Births.FOUNDER || all && kind == Births.UNKNOWN_PARENTS) {
                named[count++] = genes[node];
                byRow[births.rowOfNode()[node]] = genes[node];
            }
        }
        named = Arrays.copyOf(named, count);
        double squares = sum(squared(named)) + sum(squared(unnamed));
        double whole = all ? 1 : sum(named);
        return list(byRow, whole, sum(unnamed), whole * whole / squares);
    }

    private static double[] squared(double[] values) {
        return Arrays.stream(values).map(value -> value * value).toArray();
    }

    /** Smallest first: whatever the order of births, the sum is the same to the last bit. */
    private static double sum(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double sum = 0;
        for (double value : sorted) {
            sum += value;
        }
        return sum;
    }

    private static FounderContributions list(double[] byRow, double whole, double unnamed, double effective) {
        int[] founders = new int[byRow.length];
        double[] shares = new double[byRow.length];
        int count = 0;
        for (int row = 0; row < byRow.length; row++) {
            if (byRow[row] > 0) {
                founders[count] = row;
                shares[count++] = byRow[row] / whole;
            }
        }
        return new FounderContributions(
                Arrays.copyOf(founders, count), Arrays.copyOf(shares, count), unnamed, effective);
    }

    private static double[] unnamed(Births births, double[] genes) {
        double[] shares = new double[births.nodes()];
        int count = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            if (births.hasUnnamedParent(node)) {
                shares[count++] = 0.5 * genes[node];
            }
        }
        for (int i = 0; i < births.males().node().length; i++) {
            shares[count++] =
                    births.males().remainder()[i] * genes[births.males().node()[i]];
        }
        return Arrays.copyOf(shares, count);
    }
}
