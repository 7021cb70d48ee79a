package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What no plan can fall below in mean kinship, by conditional gradients (Frank–Wolfe) with blended pairwise steps.
 *
 * <p>A plan is looked at as the point z = (t, y) with t = 1/(N + B) and y = t·u: the share of an animal of today, and of each
 * candidate's genes, in the pool after the season. In z the mean kinship is a convex quadratic, but for the small product of
 * t and Σ yₐ·(1 − Kₐₐ)/2, which is replaced by a plane below it (McCormick). Its minimum over the convex hull of all
 * plans' points is below every plan, however many young each has. The hull's corner in a direction is found by
 * {@link Network}; a fraction of two linear functions is to be least there, which one step of Dinkelbach's method bounds.
 */
final class LowerBound {
    private static final int BITS = 32;
    private static final double ENOUGH = 1e-6;
    /** What sums of many doubles may be wrong by, relative; taken off. */
    private static final double ROUNDING = 1e-12;

    private final Season season;
    private final Genes genes;
    private final Network network;
    private final int n;
    private final double least;
    /** Of the plane below t·Σ yₐ·ownₐ: slopeOfOwn·Σ + slopeOfT·t − both. */
    private final double slopeOfOwn;

    private final double slopeOfT;

    private final List<int[]> plans = new ArrayList<>();
    private final List<double[]> points = new ArrayList<>();
    private final List<double[]> images = new ArrayList<>();
    private final List<double[]> products = new ArrayList<>();
    private double[] weights = new double[0];
    private double bound;
    private int steps;

    LowerBound(Season season, Network network) {
        this.season = season;
        this.network = network;
        genes = season.genes;
        n = season.genes.candidates();
        least = minimum(candidate -> 1);
        double most = -minimum(candidate -> -1);
        slopeOfOwn = 1 / (genes.size() + most);
        slopeOfT = slopeOfOwn * Math.max(0, minimum(genes::own));
    }

    @FunctionalInterface
    private interface Price {
        double of(int candidate);
    }

    /** What Σ price·u is at least. */
    private double minimum(Price price) {
        var cheapest = network.cheapest(litter(price), BITS);
        plans.add(cheapest.sires());
        return cheapest.atLeast();
    }

    private Network.Cost litter(Price price) {
        return (female, male) -> season.young[female] / 2 * (price.of(female) + price.of(season.females + male));
    }

    /** Goes on until the gap is closed, the steps are done, or somebody stops it; false if stopped. */
    boolean run(int mostSteps, Watch watch) {
        var first = plans.get(0);
        plans.clear();
        add(first);
        weights[0] = 1;
        while (steps < mostSteps) {
            double gap = step(gradient());
            steps++;
            if (!watch.goOn(new Progress(steps, mostSteps, Double.NaN, bound))) {
                return false;
            }
            if (gap <= ENOUGH * Math.abs(bound)) {
                break;
            }
            correct(gap);
        }
        return true;
    }

    double meanKinship() {
        return Math.max(0, bound);
    }

    /** Plans of which the hull's best point is a mixture, heaviest first. */
    List<int[]> plans() {
        return IntStream.range(0, plans.size())
                .boxed()
                .sorted((a, b) -> Double.compare(weights[b], weights[a]))
                .map(plans::get)
                .toList();
    }

    /** One call of the network: betters the bound, adds a corner. Returns how far the bound is below the present point. */
    private double step(double[] gradient) {
        double here = dot(gradient, mixture());
        double lambda = Double.POSITIVE_INFINITY;
        for (double[] point : points) {
            lambda = Math.min(lambda, dot(gradient, point));
        }
        double price = lambda;
        var cheapest = network.cheapest(litter(candidate -> gradient[1 + candidate] - price), BITS);
        double over = Math.min(0, gradient[0] - lambda * genes.size() + cheapest.atLeast());
        double below = lambda + over / (genes.size() + least);
        double value = value();
        bound = Math.max(bound, value + below - here - ROUNDING * Math.abs(value));
        add(cheapest.sires());
        return value - bound;
    }

    /** Moves weight from the worst corner to the best until what is left is small against the gap. */
    private void correct(double gap) {
        int corners = weights.length;
        double[] slope = new double[corners];
        for (int i = 0; i < corners; i++) {
            slope[i] = linear(i);
            for (int j = 0; j < corners; j++) {
                slope[i] += 2 * product(i, j) * weights[j];
            }
        }
        for (int move = 0; move < 50 * corners; move++) {
            int away = -1;
            int towards = 0;
            for (int i = 0; i < corners; i++) {
                if (weights[i] > 0 && (away < 0 || slope[i] > slope[away])) {
                    away = i;
                }
                if (slope[i] < slope[towards]) {
                    towards = i;
                }
            }
            double descent = slope[away] - slope[towards];
            if (descent <= gap / 20) {
                break;
            }
            double curve = 2 * (product(away, away) - 2 * product(away, towards) + product(towards, towards));
            double share = Math.min(weights[away], curve > 0 ? descent / curve : weights[away]);
            weights[away] -= share;
            weights[towards] += share;
            for (int i = 0; i < corners; i++) {
                slope[i] += 2 * share * (product(i, towards) - product(i, away));
            }
        }
        dropIdle();
    }

    private void dropIdle() {
        var kept =
                IntStream.range(0, weights.length).filter(i -> weights[i] > 0).toArray();
        if (kept.length == weights.length) {
            return;
        }
        keep(plans, kept);
        keep(points, kept);
        keep(images, kept);
        double sum = Arrays.stream(kept).mapToDouble(i -> weights[i]).sum();
        weights = Arrays.stream(kept).mapToDouble(i -> weights[i] / sum).toArray();
        products.clear();
        for (int i = 0; i < kept.length; i++) {
            products.add(productsOf(i));
        }
    }

    private static <T> void keep(List<T> all, int[] kept) {
        var few = Arrays.stream(kept).mapToObj(all::get).toList();
        all.clear();
        all.addAll(few);
    }

    private void add(int[] plan) {
        double[] u = Draft.halves(season, plan);
        double t = 1 / (genes.size() + Arrays.stream(u).sum());
        double[] point = new double[n + 1];
        point[0] = t;
        for (int candidate = 0; candidate < n; candidate++) {
            point[1 + candidate] = t * u[candidate];
        }
        plans.add(plan);
        points.add(point);
        images.add(image(point));
        weights = Arrays.copyOf(weights, weights.length + 1);
        products.add(productsOf(points.size() - 1));
    }

    /** With each corner up to itself. */
    private double[] productsOf(int corner) {
        double[] with = new double[corner + 1];
        for (int other = 0; other <= corner; other++) {
            with[other] = dot(points.get(corner), images.get(other));
        }
        return with;
    }

    private double product(int a, int b) {
        return a > b ? products.get(a)[b] : products.get(b)[a];
    }

    /** The form applied to a point: N²·MK in the first place, N·b in the first row and column, K beyond. */
    private double[] image(double[] point) {
        double[] related = genes.related(Arrays.copyOfRange(point, 1, n + 1));
        double[] image = new double[n + 1];
        image[0] = genes.sumNow() * point[0];
        for (int candidate = 0; candidate < n; candidate++) {
            double toPool = genes.size() * genes.toPool()[candidate];
            image[0] += toPool * point[1 + candidate];
            image[1 + candidate] = toPool * point[0] + related[candidate];
        }
        return image;
    }

    private double linear(int corner) {
        double[] point = points.get(corner);
        double own = 0;
        for (int candidate = 0; candidate < n; candidate++) {
            own += genes.own(candidate) * point[1 + candidate];
        }
        return slopeOfOwn * own + slopeOfT * point[0];
    }

    private double value() {
        double value = -slopeOfOwn * slopeOfT;
        for (int i = 0; i < weights.length; i++) {
            value += weights[i] * linear(i);
            for (int j = 0; j < weights.length; j++) {
                value += weights[i] * weights[j] * product(i, j);
            }
        }
        return value;
    }

    private double[] gradient() {
        double[] gradient = new double[n + 1];
        for (int i = 0; i < weights.length; i++) {
            if (weights[i] > 0) {
                double[] image = images.get(i);
                for (int at = 0; at <= n; at++) {
                    gradient[at] += 2 * weights[i] * image[at];
                }
            }
        }
        gradient[0] += slopeOfT;
        for (int candidate = 0; candidate < n; candidate++) {
            gradient[1 + candidate] += slopeOfOwn * genes.own(candidate);
        }
        return gradient;
    }

    private double[] mixture() {
        double[] mixture = new double[n + 1];
        for (int i = 0; i < weights.length; i++) {
            for (int at = 0; at <= n; at++) {
                mixture[at] += weights[i] * points.get(i)[at];
            }
        }
        return mixture;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
