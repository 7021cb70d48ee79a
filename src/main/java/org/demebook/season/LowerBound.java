package org.demebook.season;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What no plan can fall below in mean kinship, by conditional gradients (Frank–Wolfe) with pairwise corrections.
 *
 * <p>A plan is looked at as the point (t, y, r): t = 1/(N + B), the share of an animal of today in the pool after the season;
 * y = t·u, the shares of the candidates; r = t·(ρ·N + Σ own of its litters), nearly the same for all plans. The mean kinship
 * is a convex quadratic in t and y, with t·r, for which a plane below it stands (McCormick), and −t², for which a chord
 * does. Both are the nearer the smaller the range of t; so it is cut into pieces, and the bound is the least of theirs.
 * A piece's bound is a minimum over the convex hull of all plans' points. The corner of the hull in a direction is found
 * by {@link Network}; there a fraction of two linear functions has to be least, which one step of Dinkelbach's method bounds.
 */
final class LowerBound {
    private static final int BITS = 32;
    private static final int PIECES = 8;
    private static final int FRACTION_STEPS = 8;
    private static final double ENOUGH = 1e-5;
    private static final double NARROW = 1e-6;
    private static final double ENOUGH_AT_FIRST = 1e-4;
    /** What sums of many doubles may be wrong by, relative; taken off. */
    private static final double ROUNDING = 1e-12;

    private final Season season;
    private final Genes genes;
    private final Network network;
    private final int n;
    /** Where r stands in a point. */
    private final int own;

    private final double leastYoung;
    private final double leastShare;
    private final double mostShare;
    private Lift lift;
    /** ρ·N. */
    private double level;

    private double leastOwn;
    private double square;

    private Corners corners;
    private List<int[]> mixed = List.of();
    private double bound;
    private int steps;
    private boolean stopped;

    LowerBound(Season season, Network network) {
        this.season = season;
        this.network = network;
        genes = season.genes;
        n = season.genes.candidates();
        own = n + 1;
        var fewest = network.cheapest((female, male) -> season.young[female], BITS);
        var most = network.cheapest((female, male) -> -season.young[female], BITS);
        leastYoung = Math.max(0, fewest.atLeast());
        leastShare = 1 / (genes.size() - most.atLeast());
        mostShare = 1 / (genes.size() + leastYoung);
        lift = Lift.none(n);
        corners = piece(leastShare, mostShare, List.of(fewest.sires(), most.sires()));
    }

    /** Goes on until the gap is closed, the steps are done, or somebody stops it; false if stopped. */
    boolean run(int mostSteps, Watch watch) {
        prepare(corners.plans());
        corners = piece(leastShare, mostShare, corners.plans());
        double first = run(mostSteps / 3, mostSteps, ENOUGH_AT_FIRST, Double.POSITIVE_INFINITY, watch);
        bound = Math.max(0, first);
        mixed = corners.plans();
        if (stopped) {
            return false;
        }
        lift = Lift.of(genes, once());
        prepare(mixed);
        double least = Double.POSITIVE_INFINITY;
        for (double[] piece : pieces(corners.share())) {
            corners = piece(piece[0], piece[1], mixed);
            double its = run(mostSteps, mostSteps, ENOUGH, least, watch);
            if (stopped) {
                // pieces that nobody looked at are without a bound of their own
                return false;
            }
            if (least == Double.POSITIVE_INFINITY) {
                mixed = corners.plans();
            }
            least = Math.min(least, its);
        }
        bound = Math.max(bound, least);
        return true;
    }

    /** Steps on one piece; returns its bound, or less if it is known to be at least a cut-off. */
    private double run(int upTo, int mostSteps, double enough, double cutOff, Watch watch) {
        double least = 0;
        do {
            double value = corners.value();
            least = Math.max(least, step(value));
            steps++;
            stopped |= !watch.goOn(new Progress(Math.min(steps, mostSteps), mostSteps, Double.NaN, bound));
            if (stopped || least >= cutOff || value - least <= enough * value) {
                break;
            }
            corners.correct((value - least) / 20);
        } while (steps < upTo);
        return least;
    }

    double meanKinship() {
        return bound;
    }

    /** Plans of which the hull's best point is a mixture, heaviest first. */
    List<int[]> plans() {
        return mixed.isEmpty() ? corners.plans() : mixed;
    }

    /** By candidate, whether it has one litter at most at the hull's best point. */
    private boolean[] once() {
        double[] litters = new double[n];
        for (int corner = 0; corner < corners.size(); corner++) {
            int[] sires = corners.plan(corner);
            for (int female = 0; female < sires.length; female++) {
                if (sires[female] != Season.NONE) {
                    litters[season.females + sires[female]] += corners.weight(corner);
                }
            }
        }
        boolean[] once = new boolean[n];
        for (int candidate = 0; candidate < n; candidate++) {
            once[candidate] = litters[candidate] <= 1;
        }
        return once;
    }

    /** The range of t cut into pieces: that of the likely best plan first. */
    private List<double[]> pieces(double likely) {
        double width = (mostShare - leastShare) / PIECES;
        if (width <= NARROW * leastShare) {
            return List.of(new double[] {leastShare, mostShare});
        }
        return IntStream.range(0, PIECES)
                .mapToObj(i ->
                        new double[] {leastShare + i * width, i == PIECES - 1 ? mostShare : leastShare + (i + 1) * width
                        })
                .sorted(Comparator.comparingDouble(piece -> Math.abs((piece[0] + piece[1]) / 2 - likely)))
                .toList();
    }

    /** Chooses ρ so that r varies little, and finds how small r can be. */
    private void prepare(List<int[]> plans) {
        double sum = 0;
        double young = 0;
        for (int[] plan : plans) {
            sum += ownOf(plan);
            young += Arrays.stream(Draft.halves(season, plan)).sum();
        }
        double rho = young == 0 ? 0 : sum / young;
        level = rho * genes.size();
        double lambda = Double.POSITIVE_INFINITY;
        for (int[] plan : plans) {
            lambda = Math.min(lambda, own(plan));
        }
        leastOwn = 0;
        for (int i = 0; i < FRACTION_STEPS; i++) {
            double price = lambda;
            var cheapest = network.cheapest((female, male) -> ownOf(female, male) - price * season.young[female], BITS);
            double over = Math.min(0, level - lambda * genes.size() + cheapest.atLeast());
            leastOwn = Math.max(leastOwn, lambda + over / (genes.size() + leastYoung));
            if (own(cheapest.sires()) >= lambda) {
                break;
            }
            lambda = own(cheapest.sires());
        }
        square = Math.max(0, lift.toPool() + level);
    }

    /** r of a plan. */
    private double own(int[] plan) {
        double young = Arrays.stream(Draft.halves(season, plan)).sum();
        return (level + ownOf(plan)) / (genes.size() + young);
    }

    /** Mean kinship from below for plans with t in a range. */
    private Corners piece(double from, double to, List<int[]> plans) {
        double[] linear = new double[n + 2];
        linear[own] = from;
        linear[0] = leastOwn - square * (from + to);
        var fresh = new Corners(this::image, linear, square * from * to - from * leastOwn);
        for (int[] plan : plans) {
            fresh.add(plan, point(plan));
        }
        fresh.startAtBest();
        return fresh;
    }

    private double ownOf(int[] plan) {
        return IntStream.range(0, plan.length)
                .filter(female -> plan[female] != Season.NONE)
                .mapToDouble(female -> ownOf(female, plan[female]))
                .sum();
    }

    /** What a litter adds to the sum of kinships beyond the form in u. */
    private double ownOf(int female, int male) {
        int sire = season.females + male;
        double half = season.young[female] / 2;
        return half * (genes.own(female) + genes.own(sire)) + half * half * (lift.off()[female] + lift.off()[sire]);
    }

    /** One call of the network: adds a corner, returns a bound of the piece. */
    private double step(double value) {
        double[] gradient = corners.gradient();
        double lambda = corners.least(gradient);
        var cheapest = network.cheapest(
                (female, male) -> season.young[female]
                                / 2
                                * (gradient[1 + female] + gradient[1 + season.females + male] - 2 * lambda)
                        + gradient[own] * ownOf(female, male),
                BITS);
        double over = gradient[0] + gradient[own] * level - lambda * genes.size() + cheapest.atLeast();
        double least = lambda + Math.min(0, over) / (genes.size() + leastYoung);
        double reached = value + least - corners.at(gradient) - ROUNDING * Math.abs(value);
        corners.add(cheapest.sires(), point(cheapest.sires()));
        return reached;
    }

    private double[] point(int[] plan) {
        double[] u = Draft.halves(season, plan);
        double t = 1 / (genes.size() + Arrays.stream(u).sum());
        double[] point = new double[n + 2];
        point[0] = t;
        for (int candidate = 0; candidate < n; candidate++) {
            point[1 + candidate] = t * u[candidate];
        }
        point[own] = t * (level + ownOf(plan));
        return point;
    }

    /** The form applied to a point: N²·MK in the first place, N·b in the first row and column, K beyond, all lifted. */
    private double[] image(double[] point) {
        double[] y = Arrays.copyOfRange(point, 1, n + 1);
        double[] related = genes.related(y);
        double[] image = new double[n + 2];
        image[0] = (genes.sumNow() + square - level) * point[0];
        for (int candidate = 0; candidate < n; candidate++) {
            double toPool = genes.size() * genes.toPool()[candidate];
            image[0] += toPool * y[candidate];
            image[1 + candidate] = toPool * point[0] + related[candidate] - lift.off()[candidate] * y[candidate];
        }
        return image;
    }
}
