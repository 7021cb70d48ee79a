package org.demebook.plot;

import java.util.List;

/**
 * What is followed along an axis under one name.
 *
 * @param points in the order of the axis, no place twice
 */
public record Series(String name, List<Point> points) {
    public Series {
        points = List.copyOf(points);
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).at() <= points.get(i - 1).at()) {
                throw new IllegalArgumentException(name + ": " + points.get(i).at() + " does not come after "
                        + points.get(i - 1).at());
            }
        }
    }

    /**
     * A value at a place, with the interval it lies in.
     *
     * @param value not a number where it is missing: the line has a gap there
     * @param low and {@code high}: not a number where there is no interval
     */
    public record Point(double at, double value, double low, double high) {
        public Point {
            if (!Double.isFinite(at) || Double.isInfinite(value) || Double.isInfinite(low) || Double.isInfinite(high)) {
                throw new IllegalArgumentException("A point is finite, or missing: " + at + ", " + value);
            }
            if (Double.isNaN(low) != Double.isNaN(high) || low > high) {
                throw new IllegalArgumentException("An interval has a lower and an upper end: " + low + ", " + high);
            }
        }

        public static Point of(double at, double value) {
            return new Point(at, value, Double.NaN, Double.NaN);
        }

        public static Point missing(double at) {
            return of(at, Double.NaN);
        }

        /** An interval without a value in it. */
        public static Point between(double at, double low, double high) {
            return new Point(at, Double.NaN, low, high);
        }

        boolean known() {
            return !Double.isNaN(value);
        }

        boolean hasInterval() {
            return !Double.isNaN(low);
        }
    }

    boolean hasValues() {
        return points.stream().anyMatch(Point::known);
    }

    boolean hasIntervals() {
        return points.stream().anyMatch(Point::hasInterval);
    }
}
