package org.demebook.chart;

import java.text.Normalizer;

/**
 * How wide a text will about be, without knowing the reader's typeface: as wide as in DejaVu Sans Bold, one of the widest. Letters
 * outside Latin count as wide as they usually get.
 */
final class TextWidth {
    /** Advances of U+0020 to U+007E in hundredths of the size of text, from the typeface in resources/fonts. */
    private static final int[] LATIN = {
        35, 46, 52, 84, 70, 100, 87, 31, 46, 46, 52, 84, 38, 42, 38, 37, 70, 70, 70, 70, 70, 70, 70, 70, //
        70, 70, 40, 40, 84, 84, 84, 58, 100, 77, 76, 73, 83, 68, 68, 82, 84, 37, 37, 77, 64, 100, 84, 85, //
        73, 85, 77, 72, 68, 81, 77, 110, 77, 72, 72, 46, 37, 46, 84, 50, 50, 67, 72, 59, 72, 68, 43, 72, //
        71, 34, 34, 66, 34, 104, 71, 69, 72, 72, 49, 60, 48, 71, 65, 92, 64, 65, 58, 71, 37, 71, 84
    };

    static final double FONT_SIZE = 12;

    private TextWidth() {}

    /** In pixels, at the chart's size of text. */
    static double of(String text) {
        return text.codePoints().mapToDouble(TextWidth::em).sum() * FONT_SIZE;
    }

    /** The text, or its beginning and an ellipsis. */
    static String cut(String text, double width) {
        if (of(text) <= width) {
            return text;
        }
        var points = text.codePoints().toArray();
        double used = em('…') * FONT_SIZE;
        int kept = 0;
        while (used + em(points[kept]) * FONT_SIZE <= width) {
            used += em(points[kept++]) * FONT_SIZE;
        }
        return new String(points, 0, kept).strip() + "…";
    }

    private static double em(int letter) {
        int base = letter < 0x250
                ? Normalizer.normalize(Character.toString(letter), Normalizer.Form.NFD)
                        .charAt(0)
                : letter;
        if (base >= ' ' && base <= '~') {
            return LATIN[base - ' '] / 100.0;
        }
        return letter < 0x1100 ? 1.05 : letter == '…' ? 1 : 1.25;
    }
}
