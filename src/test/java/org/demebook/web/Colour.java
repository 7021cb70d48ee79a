package org.demebook.web;

import java.util.Arrays;

/** A colour of the screen, as the standards compute with it: red, green and blue of sRGB, each in [0, 1]. */
record Colour(double red, double green, double blue) {
    /** The matrix from linear sRGB to CIE XYZ under daylight D65, IEC 61966-2-1. */
    private static final double[][] TO_XYZ = {
        {0.4124564, 0.3575761, 0.1804375}, {0.2126729, 0.7151522, 0.0721750}, {0.0193339, 0.1191920, 0.9503041}
    };

    private static final double[] DAYLIGHT = {0.95047, 1, 1.08883};

    /** @param hex six digits after a number sign, as in a stylesheet */
    static Colour of(String hex) {
        if (!hex.matches("#[0-9a-fA-F]{6}")) {
            throw new IllegalArgumentException(hex + " is no colour of six digits");
        }
        int rgb = Integer.parseInt(hex.substring(1), 16);
        return new Colour((rgb >> 16) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0);
    }

    /** Relative luminance in [0, 1]. Source: WCAG 2.2, definition of "relative luminance". */
    double luminance() {
        var light = linear();
        return 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2];
    }

    /** Contrast ratio in [1, 21]. Source: WCAG 2.2, definition of "contrast ratio". */
    double contrast(Colour other) {
        double lighter = Math.max(luminance(), other.luminance());
        double darker = Math.min(luminance(), other.luminance());
        return (lighter + 0.05) / (darker + 0.05);
    }

    /** How far apart two colours look: Euclidean distance in CIE 1976 L*a*b*, where about 2.3 is just noticeable. */
    double distance(Colour other, Sight sight) {
        var a = lab(sight.seen(linear()));
        var b = lab(sight.seen(other.linear()));
        return Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
    }

    double[] lab() {
        return lab(linear());
    }

    private double[] linear() {
        return Arrays.stream(new double[] {red, green, blue})
                .map(c -> c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4))
                .toArray();
    }

    private static double[] lab(double[] linear) {
        var xyz = times(TO_XYZ, linear);
        var f = new double[3];
        for (int i = 0; i < 3; i++) {
            double t = xyz[i] / DAYLIGHT[i];
            f[i] = t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
        }
        return new double[] {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
    }

    private static double[] times(double[][] matrix, double[] vector) {
        return Arrays.stream(matrix)
                .mapToDouble(row -> row[0] * vector[0] + row[1] * vector[1] + row[2] * vector[2])
                .toArray();
    }

    /**
     * Eyes without one kind of cone, at its full extent.
     *
     * <p>Source: Machado, Oliveira &amp; Fernandes (2009), A physiologically-based model for simulation of color vision
     * deficiency, IEEE TVCG 15: 1291–1298, severity 1.0; the matrices as several open implementations agree on them.
     */
    enum Sight {
        TRICHROMAT(new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}),
        PROTANOPE(new double[][] {
            {0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}
        }),
        DEUTERANOPE(new double[][] {
            {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
        }),
        TRITANOPE(new double[][] {
            {1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}
        });

        private final double[][] matrix;

        Sight(double[][] matrix) {
            this.matrix = matrix;
        }

        private double[] seen(double[] linear) {
            return Arrays.stream(times(matrix, linear))
                    .map(c -> Math.min(1, Math.max(0, c)))
                    .toArray();
        }
    }
}
