package org.demebook.season;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Good numbers of young for the litters of a plan: one young each, then one more where it does best, again and again; at every
 * total young are shifted from one litter to another as long as that helps. The best total is kept, or the one that is wanted.
 * Not proven to be the best. Cost: totals × litters² and more.
 */
final class YoungNumbers {
    private static final double HELPS = 1e-12;

    private final Genes genes;
    /** By litter, the most young, what one adds to the sum of kinships by itself, and with the young of each other. */
    private final int[] most;

    private final double[] alone;
    private final double[][] together;

    private final int[] young;
    private final double[] related;
    private double sum;

    private YoungNumbers(Season season, int[] sires, int[] most) {
        genes = season.genes;
        int[] dams = IntStream.range(0, sires.length)
                .filter(female -> sires[female] != Season.NONE)
                .toArray();
        int litters = dams.length;
        this.most = new int[litters];
        alone = new double[litters];
        together = new double[litters][litters];
        young = new int[litters];
        related = new double[litters];
        sum = genes.sumNow();
        for (int i = 0; i < litters; i++) {
            int sire = season.females + sires[dams[i]];
            this.most[i] = most[dams[i]];
            alone[i] = (genes.linear(dams[i]) + genes.linear(sire)) / 2;
            for (int j = 0; j < litters; j++) {
                int other = season.females + sires[dams[j]];
                together[i][j] = (genes.kinship()[dams[i]][dams[j]]
                                + genes.kinship()[dams[i]][other]
                                + genes.kinship()[sire][dams[j]]
                                + genes.kinship()[sire][other])
                        / 4;
            }
        }
    }

    /**
     * By female, the young of her litter; 0 without one. Nothing if the plan cannot have the wanted total.
     *
     * @param most by female
     */
    static Optional<int[]> of(Season season, int[] sires, int[] most, OptionalInt total) {
        return new YoungNumbers(season, sires, most).best(total).map(best -> {
            int[] numbers = new int[sires.length];
            int litter = 0;
            for (int female = 0; female < sires.length; female++) {
                numbers[female] = sires[female] == Season.NONE ? 0 : best[litter++];
            }
            return numbers;
        });
    }

    private Optional<int[]> best(OptionalInt wanted) {
        int highest = wanted.orElse(IntStream.of(most).sum());
        if (highest < young.length || highest > IntStream.of(most).sum()) {
            return Optional.empty();
        }
        for (int litter = 0; litter < young.length; litter++) {
            add(litter, 1);
        }
        shift();
        int[] best = young.clone();
        double least = after(young.length);
        for (int total = young.length + 1; total <= highest; total++) {
            add(cheapest(), 1);
            shift();
            if (wanted.isPresent() || after(total) < least) {
                least = after(total);
                best = young.clone();
            }
        }
        return Optional.of(best);
    }

    private double after(int total) {
        double animals = genes.size() + total;
        return sum / (animals * animals);
    }

    private void add(int litter, int sign) {
        sum += sign * (alone[litter] + 2 * related[litter]) + together[litter][litter];
        young[litter] += sign;
        for (int other = 0; other < young.length; other++) {
            related[other] += sign * together[litter][other];
        }
    }

    /** What one more young of a litter adds to the sum of kinships. */
    private double more(int litter) {
        return alone[litter] + 2 * related[litter] + together[litter][litter];
    }

    private double less(int litter) {
        return together[litter][litter] - alone[litter] - 2 * related[litter];
    }

    private int cheapest() {
        int cheapest = -1;
        for (int litter = 0; litter < young.length; litter++) {
            if (young[litter] < most[litter] && (cheapest < 0 || more(litter) < more(cheapest))) {
                cheapest = litter;
            }
        }
        return cheapest;
    }

    /** One young fewer here and one more there, the best first, as long as that helps. */
    private void shift() {
        double gain;
        do {
            gain = 0;
            int from = 0;
            int to = 0;
            for (int one = 0; one < young.length; one++) {
                for (int other = 0; other < young.length && young[one] > 1; other++) {
                    if (one != other && young[other] < most[other]) {
                        double change = less(one) + more(other) - 2 * together[one][other];
                        if (change < gain - HELPS) {
                            gain = change;
                            from = one;
                            to = other;
                        }
                    }
                }
            }
            if (gain < 0) {
                add(from, -1);
                add(to, 1);
            }
        } while (gain < 0);
    }
}
