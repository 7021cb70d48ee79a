package org.demebook.web.pairing;

import io.quarkus.qute.TemplateExtension;
import org.jspecify.annotations.Nullable;

/** Writes kinships as breeders know them: half siblings 1/8, full siblings 1/4. In templates {@code fraction:of}. */
@TemplateExtension(namespace = "fraction")
public final class Fractions {
    private static final int LARGEST_DENOMINATOR = 256;
    private static final double ROUNDING = 1e-9;

    private Fractions() {}

    /** As a fraction of a small power of two; null where it is none, and of 0 and 1. */
    public static @Nullable String of(@Nullable Double value) {
        if (value == null || value <= ROUNDING || value >= 1 - ROUNDING) {
            return null;
        }
        for (int denominator = 2; denominator <= LARGEST_DENOMINATOR; denominator *= 2) {
            double numerator = value * denominator;
            if (Math.abs(numerator - Math.rint(numerator)) < ROUNDING * denominator) {
                return Math.round(numerator) + "/" + denominator;
            }
        }
        return null;
    }
}
