package org.demebook.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * How a text stands in a cell.
 *
 * <p>A spreadsheet takes a cell that begins with {@code = + - @} for a formula, which may do harm to who opens the file.
 * Such a text is written with an apostrophe before it, and read without; one that has apostrophes there already gets and
 * loses one more, so that every text comes back as it was.
 *
 * <p>Several values in one cell are separated by semicolons; a semicolon or backslash inside a value has a backslash
 * before it.
 */
final class Cells {
    private static final Pattern LIKE_A_FORMULA = Pattern.compile("'*[=+\\-@].*", Pattern.DOTALL);
    private static final Pattern GUARDED = Pattern.compile("'+[=+\\-@].*", Pattern.DOTALL);
    private static final Pattern CONTROL_CHARACTER = Pattern.compile("[\\p{Cc}&&[^\\r\\n\\t]]");
    private static final Pattern LINE_END = Pattern.compile("\\r\\n?");

    private Cells() {}

    /** The text of a cell as it is meant: without space around it, line ends as one sign, the guard taken off. */
    static String read(String cell) {
        var text = plain(cell);
        return GUARDED.matcher(text).matches() ? text.substring(1) : text;
    }

    /** A text as it is written into a cell, without what cannot be printed. */
    static String write(String text) {
        var plain = plain(CONTROL_CHARACTER.matcher(text).replaceAll(""));
        return LIKE_A_FORMULA.matcher(plain).matches() ? "'" + plain : plain;
    }

    private static String plain(String text) {
        return LINE_END.matcher(text.strip()).replaceAll("\n");
    }

    static List<String> split(String cell) {
        return EscapedText.split(cell, ';').stream()
                .map(part -> EscapedText.unescape(part).strip())
                .filter(part -> !part.isEmpty())
                .distinct()
                .toList();
    }

    static String join(List<String> values) {
        return values.stream()
                .map(value -> EscapedText.escape(value.strip(), ";"))
                .filter(value -> !value.isEmpty())
                .collect(Collectors.joining("; "));
    }

    /** Texts in which a backslash takes the sign after it as it stands. */
    static final class EscapedText {
        private static final String ESCAPABLE = "|:;\\";

        private EscapedText() {}

        /** Cuts at each separator that has no backslash before it; the parts keep their backslashes. */
        static List<String> split(String text, char separator) {
            var parts = new ArrayList<String>();
            int from = 0;
            for (int at = 0; at < text.length(); at++) {
                if (text.charAt(at) == '\\') {
                    at++;
                } else if (text.charAt(at) == separator) {
                    parts.add(text.substring(from, at));
                    from = at + 1;
                }
            }
            parts.add(text.substring(from));
            return parts;
        }

        /** Takes the backslashes off that stand before a sign with a meaning. */
        static String unescape(String text) {
            var plain = new StringBuilder();
            for (int at = 0; at < text.length(); at++) {
                var escapes = text.charAt(at) == '\\'
                        && at + 1 < text.length()
                        && ESCAPABLE.indexOf(text.charAt(at + 1)) >= 0;
                plain.append(text.charAt(escapes ? ++at : at));
            }
            return plain.toString();
        }

        static String escape(String text, String signs) {
            var escaped = new StringBuilder();
            for (char sign : text.toCharArray()) {
                if (sign == '\\' || signs.indexOf(sign) >= 0) {
                    escaped.append('\\');
                }
                escaped.append(sign);
            }
            return escaped.toString();
        }
    }
}
