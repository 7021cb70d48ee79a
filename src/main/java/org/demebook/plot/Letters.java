package org.demebook.plot;

/** How wide a text is about, in the typeface that a device has, and how much of it fits. */
final class Letters {
    /** The largest size that the style sheet sets text of a plot in, in units. */
    static final double SIZE = 13;

    private static final String NARROW = " .,:;'`!|()[]{}/\\\"-·°ijltfrI";
    private static final String BROAD = "mwMW%@—…≥≤";

    private Letters() {}

    /** Generous rather than short. */
    static double width(String text) {
        return SIZE * text.codePoints().mapToDouble(Letters::share).sum();
    }

    /** The text, or as much of its beginning as is at most so wide with an ellipsis, or nothing. */
    static String fit(String text, double units) {
        if (width(text) <= units) {
            return text;
        }
        double left = units - SIZE * share('…');
        if (left < 0) {
            return "";
        }
        var kept = new StringBuilder();
        for (int sign : text.codePoints().toArray()) {
            left -= SIZE * share(sign);
            if (left < 0) {
                break;
            }
            kept.appendCodePoint(sign);
        }
        return kept.toString().strip() + "…";
    }

    private static double share(int sign) {
        if (sign >= 0x1100) {
            return sign >= 0x2000 && sign < 0x2E80 ? broadOr(sign, .6) : 1.05;
        }
        return broadOr(sign, NARROW.indexOf(sign) >= 0 ? .36 : Character.isUpperCase(sign) ? .7 : .58);
    }

    private static double broadOr(int sign, double otherwise) {
        return BROAD.indexOf(sign) >= 0 ? .95 : otherwise;
    }
}
