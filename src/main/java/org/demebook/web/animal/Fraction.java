package org.demebook.web.animal;

/**
 * A figure of a pedigree as a fraction. Each birth halves, so that without uncertain sires every figure is a whole number of
 * parts of a power of two.
 */
final class Fraction {
    private static final int LARGEST = 4096;
    private static final double EXACT = 1e-9; // of a part: what rounding leaves, and chance does not

    private Fraction() {}

    /** The same of what is neither 0 nor 1. */
    static String part(double figure) {
        var fraction = of(figure);
        return fraction.contains("/") ? fraction : "";
    }

    /** Such as {@code 5/32}; empty where it is none of a denominator that people can read. */
    static String of(double figure) {
        for (int parts = 1; parts <= LARGEST; parts *= 2) {
            double scaled = figure * parts;
            long whole = Math.round(scaled);
            if (Math.abs(scaled - whole) < EXACT) {
                return parts == 1 ? Long.toString(whole) : whole + "/" + parts;
            }
        }
        return "";
    }
}
