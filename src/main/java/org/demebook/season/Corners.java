package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * A mixture of plans' points, and a convex quadratic at it: form, linear part, constant. What is needed of the form is kept as
 * products of points with each other, so that mixing costs nothing but them.
 */
final class Corners {
    private static final int MOVES_EACH = 50;

    private final UnaryOperator<double[]> form;
    private final double[] linear;
    private final double constant;

    private final List<int[]> plans = new ArrayList<>();
    private final List<double[]> points = new ArrayList<>();
    private final List<double[]> images = new ArrayList<>();
    /** Of each corner with those up to itself. */
    private final List<double[]> products = new ArrayList<>();

    private double[] weights = new double[0];

    Corners(UnaryOperator<double[]> form, double[] linear, double constant) {
        this.form = form;
        this.linear = linear;
        this.constant = constant;
    }

    int size() {
        return weights.length;
    }

    int[] plan(int corner) {
        return plans.get(corner);
    }

    double weight(int corner) {
        return weights[corner];
    }

    /** Heaviest first. */
    List<int[]> plans() {
        return IntStream.range(0, plans.size())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer corner) -> -weights[corner]))
                .map(plans::get)
                .toList();
    }

    /** A corner that has no weight yet. */
    void add(int[] plan, double[] point) {
        plans.add(plan);
        points.add(point);
        images.add(form.apply(point));
        weights = Arrays.copyOf(weights, weights.length + 1);
        products.add(productsOf(points.size() - 1));
    }

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

    /** All weight on the corner with the least value. */
    void startAtBest() {
        int best = 0;
        for (int corner = 1; corner < weights.length; corner++) {
            if (value(corner) < value(best)) {
                best = corner;
            }
        }
        Arrays.fill(weights, 0);
        weights[best] = 1;
    }

    private double value(int corner) {
        return product(corner, corner) + dot(linear, points.get(corner)) + constant;
    }

    /** At the mixture. */
    double value() {
        double value = constant;
        for (int i = 0; i < weights.length; i++) {
            value += weights[i] * dot(linear, points.get(i));
            for (int j = 0; j < weights.length; j++) {
                value += weights[i] * weights[j] * product(i, j);
            }
        }
        return value;
    }

    /** At the mixture. */
    double[] gradient() {
        double[] gradient = linear.clone();
        for (int corner = 0; corner < weights.length; corner++) {
            if (weights[corner] > 0) {
                double[] image = images.get(corner);
                for (int at = 0; at < gradient.length; at++) {
                    gradient[at] += 2 * weights[corner] * image[at];
                }
            }
        }
        return gradient;
    }

    /** The first coordinate of the mixture. */
    double share() {
        double share = 0;
        for (int corner = 0; corner < weights.length; corner++) {
            share += weights[corner] * points.get(corner)[0];
        }
        return share;
    }

    /** A direction's product with the mixture. */
    double at(double[] direction) {
        double sum = 0;
        for (int corner = 0; corner < weights.length; corner++) {
            sum += weights[corner] * dot(direction, points.get(corner));
        }
        return sum;
    }

    /** The least product of a direction with a corner. */
    double least(double[] direction) {
        return points.stream().mapToDouble(point -> dot(direction, point)).min().orElseThrow();
    }

    /** Moves weight from the steepest corner to the one that descends most, until there is no descent but a little. */
    void correct(double little) {
        double[] slope = slopes();
        for (int move = 0; move < MOVES_EACH * weights.length; move++) {
            int from = -1;
            int to = 0;
            for (int corner = 0; corner < weights.length; corner++) {
                if (weights[corner] > 0 && (from < 0 || slope[corner] > slope[from])) {
                    from = corner;
                }
                if (slope[corner] < slope[to]) {
                    to = corner;
                }
            }
            double descent = slope[from] - slope[to];
            if (descent <= little) {
                break;
            }
            double curve = 2 * (product(from, from) - 2 * product(from, to) + product(to, to));
            double share = curve * weights[from] > descent ? descent / curve : weights[from];
            weights[from] -= share;
            weights[to] += share;
            for (int corner = 0; corner < weights.length; corner++) {
                slope[corner] += 2 * share * (product(corner, to) - product(corner, from));
            }
        }
        dropIdle();
    }

    private double[] slopes() {
        double[] slope = new double[weights.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = dot(linear, points.get(i));
            for (int j = 0; j < slope.length; j++) {
                slope[i] += 2 * product(i, j) * weights[j];
            }
        }
        return slope;
    }

    private void dropIdle() {
        int[] kept = IntStream.range(0, weights.length)
                .filter(corner -> weights[corner] > 0)
                .toArray();
        if (kept.length == weights.length) {
            return;
        }
        keep(plans, kept);
        keep(points, kept);
        keep(images, kept);
        double sum = Arrays.stream(kept).mapToDouble(corner -> weights[corner]).sum();
        weights =
                Arrays.stream(kept).mapToDouble(corner -> weights[corner] / sum).toArray();
        products.clear();
        for (int corner = 0; corner < kept.length; corner++) {
            products.add(productsOf(corner));
        }
    }

    private static <T> void keep(List<T> all, int[] kept) {
        var few = Arrays.stream(kept).mapToObj(all::get).toList();
        all.clear();
        all.addAll(few);
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
