package org.demebook.signing;

/** Which code points I-JSON keeps out of names and strings (RFC 7493, 2.1). */
final class CodePoints {
    private CodePoints() {}

    /** Whether there is half a surrogate pair. */
    static boolean hasLoneSurrogate(String text) {
        return text.codePoints().anyMatch(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE);
    }

    /** Whether there is one of the 66 noncharacters: U+FDD0 to U+FDEF, and the last two of each plane. */
    static boolean hasNoncharacter(String text) {
        return text.codePoints().anyMatch(c -> c >= 0xFDD0 && c <= 0xFDEF || (c & 0xFFFE) == 0xFFFE);
    }
}
