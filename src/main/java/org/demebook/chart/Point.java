package org.demebook.chart;

/** A place in the chart in pixels, y downwards, rounded to a tenth: what meets has the same numbers. */
record Point(double x, double y) {
    Point {
        x = Math.rint(x * 10) / 10;
        y = Math.rint(y * 10) / 10;
    }
}
