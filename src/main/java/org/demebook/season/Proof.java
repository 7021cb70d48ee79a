package org.demebook.season;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * That no plan of a small season falls below a mean kinship, by going through all of them that might (branch and bound): female
 * after female, each with every sire or none. A better plan that is met on the way is kept.
 *
 * <p>What is decided counts as it is. What is not is bounded as in {@link LowerBound}, with the lift for males too, limits on
 * what is decided aside: from a few conditional gradients, each with the cheapest sire for every female. The young that count in all are
 * cut into ranges, within which (N + B)² is nearly its chord.
 */
final class Proof {
    private static final int RANGES = 24;
    private static final int GRADIENTS = 24;
    private static final double[] SHARES = {.998, .999, .9995, 1};
    private static final int LOOK_EVERY = 1 << 12;
    /** A plan that is better by less is not taken for it: the search has decided among those by inbreeding. */
    private static final double SAME = 5e-12;

    /** What sums of many doubles may be wrong by, relative. */
    private static final double ROUNDING = 1e-11;

    private final Season season;
    private final Genes genes;
    private final double[] off;
    private final Draft draft;
    private final boolean[] decided;
    private final Watch watch;
    private final double bound;

    private int[] best;
    private double bestMeanKinship;
    /** Of all plans met, those included that are no better than the best but by so little that the less inbred stands. */
    private double lowest;

    private double target;
    private double from;
    private double to;
    private long allowed;
    private long left;
    private boolean stopped;

    private final double[] mixture;
    private final double[] slope;
    private final double[] corner;
    private final double[] cost;
    private final Integer[] order;

    Proof(Season season, int[] best, double bound, Watch watch) {
        this.season = season;
        this.best = best;
        this.bound = bound;
        this.watch = watch;
        genes = season.genes;
        boolean[] all = new boolean[genes.candidates()];
        Arrays.fill(all, true);
        off = Lift.of(genes, all).off();
        int[] settled = new int[season.females];
        Arrays.fill(settled, Season.NONE);
        season.locked.forEach(pair -> settled[pair.female()] = pair.male());
        draft = new Draft(season, settled, 0);
        decided = new boolean[season.females];
        season.locked.forEach(pair -> decided[pair.female()] = true);
        bestMeanKinship = new Draft(season, best, 0).meanKinship();
        lowest = bestMeanKinship;
        mixture = new double[genes.candidates()];
        slope = new double[genes.candidates()];
        corner = new double[genes.candidates()];
        cost = new double[season.females];
        order = IntStream.range(0, season.females).boxed().toArray(Integer[]::new);
    }

    /**
     * Raises a bound as far as the steps reach: to a little below the best plan's mean kinship, then nearer, then to itself.
     *
     * @param steps so many partial plans are looked at for each, at most
     */
    double raise(long steps) {
        double raised = bound;
        for (double share : SHARES) {
            if (share * bestMeanKinship > raised) {
                double proven = prove(share, steps);
                if (proven == 0) {
                    break;
                }
                raised = Math.max(raised, proven);
            }
        }
        return raised;
    }

    /** The best plan known, perhaps met here. */
    int[] best() {
        return best;
    }

    boolean stopped() {
        return stopped;
    }

    /**
     * Whether no plan falls below the best one, or below less than that.
     *
     * @param share of the best plan's mean kinship; 1 for itself, or less
     * @param steps so many partial plans are looked at, at most
     * @return what no plan falls below; 0 if that many are not enough, or somebody stops it
     */
    double prove(double share, long steps) {
        allowed = steps;
        left = steps;
        double[] sizes = IntStream.range(0, season.females)
                .filter(female -> !decided[female])
                .mapToDouble(female -> season.young[female])
                .sorted()
                .toArray();
        int fewest = Math.max(0, season.least - draft.litters());
        int most = Math.min(sizes.length, Math.max(0, Math.min(season.most, season.females) - draft.litters()));
        double low = draft.young()
                + Arrays.stream(sizes, 0, Math.min(fewest, sizes.length)).sum();
        double high = draft.young()
                + Arrays.stream(sizes, sizes.length - most, sizes.length).sum();
        double width = (high - low) / RANGES;
        int ranges = width < 1e-9 ? 1 : RANGES;
        for (int range = 0; range < ranges; range++) {
            // the ends overlap a little, so that rounding leaves nothing out
            from = low + range * width - 1e-9;
            to = (ranges == 1 ? high : low + (range + 1) * width) + 1e-9;
            target = Math.min(share * bestMeanKinship, lowest);
            if (!goThrough()) {
                return 0;
            }
        }
        return Math.min(share * bestMeanKinship, lowest) * (1 - 2 * ROUNDING);
    }

    /** All that the draft can become; false if the steps are not enough. */
    private boolean goThrough() {
        if (--left < 0 || stopped) {
            return false;
        }
        if (left % LOOK_EVERY == 0) {
            stopped = !watch.goOn(new Progress(allowed - left, allowed, bestMeanKinship, bound));
        }
        if (draft.keepsLimits()) {
            met(draft.meanKinship());
        }
        int next = next();
        if (next == Season.NONE) {
            return true;
        }
        double[] its = slope.clone();
        decided[next] = true;
        boolean through = true;
        var sires = IntStream.range(0, season.males)
                .filter(male -> season.isOpen(next, male))
                .boxed()
                .sorted(Comparator.comparingDouble(male -> cost(its, next, male)))
                .toList();
        for (int male : sires) {
            through = through && with(next, male);
        }
        through = through && goThrough();
        decided[next] = false;
        return through;
    }

    private void met(double meanKinship) {
        lowest = Math.min(lowest, meanKinship);
        target = Math.min(target, lowest);
        if (meanKinship < bestMeanKinship - SAME) {
            best = draft.sires.clone();
            bestMeanKinship = meanKinship;
        }
    }

    private boolean with(int female, int male) {
        put(female, male, 1);
        draft.sires[female] = male;
        draft.settle();
        boolean through = !draft.isWithin() || goThrough();
        put(female, male, -1);
        draft.sires[female] = Season.NONE;
        draft.settle();
        return through;
    }

    private void put(int female, int male, int sign) {
        draft.begin();
        draft.shift(female, male, sign);
        draft.proposed();
        draft.take();
    }

    /** Whom to decide on next; nobody if nothing better can come of the draft. */
    private int next() {
        int fewest = Math.max(0, season.least - draft.litters());
        int most = Math.min(season.most, season.females) - draft.litters();
        double low = Math.max(from, draft.young());
        if (most <= 0 || draft.young() > to) {
            return Season.NONE;
        }
        double ends = 2 * genes.size() + low + to;
        double chord = target * ends;
        double base = draft.sum()
                - target * (ends * (genes.size() + draft.young()) - (genes.size() + low) * (genes.size() + to));
        Arrays.fill(mixture, 0);
        int next = Season.NONE;
        for (int step = 0; step < GRADIENTS; step++) {
            double square = slopes(chord);
            int chosen = cheapest(fewest, most);
            if (chosen < fewest) {
                return Season.NONE;
            }
            double least = base - square;
            Arrays.fill(corner, 0);
            for (int i = 0; i < chosen; i++) {
                least += cost[order[i]];
            }
            if (least >= -ROUNDING * draft.sum()) {
                return Season.NONE;
            }
            if (cost[order[0]] == Double.POSITIVE_INFINITY) {
                return Season.NONE;
            }
            next = order[0];
            move(chosen, step);
        }
        return next;
    }

    /** The slope at the mixture for what is not decided; returns its form. */
    private double slopes(double chord) {
        double square = 0;
        for (int candidate = 0; candidate < slope.length; candidate++) {
            double form = -off[candidate] * mixture[candidate];
            double[] row = genes.kinship()[candidate];
            for (int other = 0; other < slope.length; other++) {
                form += row[other] * mixture[other];
            }
            square += mixture[candidate] * form;
            slope[candidate] = genes.linear(candidate) + 2 * draft.related(candidate) + 2 * form - chord;
        }
        return square;
    }

    private double cost(double[] slope, int female, int male) {
        int sire = season.females + male;
        double half = season.young[female] / 2;
        return half * (slope[female] + slope[sire]) + half * half * (off[female] + off[sire]);
    }

    /** Sorts those who are not decided by the cost of their cheapest litter; how many of them have one. */
    private int cheapest(int fewest, int most) {
        int open = 0;
        for (int female = 0; female < cost.length; female++) {
            cost[female] = Double.POSITIVE_INFINITY;
            if (!decided[female]) {
                int sire = cheapestSire(female);
                if (sire != Season.NONE) {
                    cost[female] = cost(slope, female, sire);
                    open++;
                }
            }
        }
        Arrays.sort(order, Comparator.comparingDouble(female -> cost[female]));
        int chosen = 0;
        while (chosen < Math.min(open, most) && (chosen < fewest || cost[order[chosen]] < 0)) {
            chosen++;
        }
        return chosen;
    }

    private int cheapestSire(int female) {
        int cheapest = Season.NONE;
        for (int male = 0; male < season.males; male++) {
            if (season.isOpen(female, male)
                    && draft.leavesMale(male)
                    && (cheapest == Season.NONE || cost(slope, female, male) < cost(slope, female, cheapest))) {
                cheapest = male;
            }
        }
        return cheapest;
    }

    private void move(int chosen, int step) {
        for (int i = 0; i < chosen; i++) {
            int female = order[i];
            double half = season.young[female] / 2;
            corner[female] += half;
            corner[season.females + cheapestSire(female)] += half;
        }
        double share = 2.0 / (step + 2);
        for (int candidate = 0; candidate < mixture.length; candidate++) {
            mixture[candidate] += share * (corner[candidate] - mixture[candidate]);
        }
    }
}
