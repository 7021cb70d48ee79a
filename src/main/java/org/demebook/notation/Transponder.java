package org.demebook.notation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The code of an animal's microchip: by ISO 11784 a country or manufacturer code of three digits (001 to 998), then an
 * identification of twelve digits that fits 38 bits; or of an older tag, 9 or 10 digits or letters from A to F (from
 * memory).
 *
 * <p>There is no check digit, so a mistyped code looks as good as the right one: compare it with the codes already
 * known by {@link #oneDigitOff}, or look up its {@link #neighbours}.
 *
 * @param code exactly 15 digits; of an older tag 9 or 10 digits or capital letters
 */
public record Transponder(String code) {
    private static final Pattern FIFTEEN_DIGITS = Pattern.compile("[0-9]{15}");
    private static final Pattern SEPARATOR = Pattern.compile("[\\s\\p{Z}\\p{Pd}\\u2212\\u00AD\\u200B\\uFEFF.]");
    private static final int LONGEST_TEXT = 60;
    private static final long HIGHEST_IDENTIFICATION = (1L << 38) - 1;
    private static final String TEST_TAG = "999";
    private static final Pattern OLDER = Pattern.compile("[0-9A-F]{9,10}");
    private static final String DIGITS = "0123456789";
    private static final String OLDER_DIGITS = "0123456789ABCDEF";

    public Transponder {
        if (!OLDER.matcher(code).matches()) {
            requireIso(code);
        }
    }

    private static void requireIso(String code) {
        if (!FIFTEEN_DIGITS.matcher(code).matches()) {
            throw new IllegalArgumentException("A microchip code (ISO 11784) is exactly 15 digits");
        }
        String issuer = code.substring(0, 3);
        if (issuer.equals(TEST_TAG)) {
            throw new IllegalArgumentException(
                    "A code that begins with 999 is a test tag and identifies no animal; scan the animal again");
        }
        if (issuer.equals("000")) {
            throw new IllegalArgumentException(
                    "A microchip code begins with a country or manufacturer code from 001 to 998, not 000; scan again");
        }
        if (Long.parseLong(code.substring(3)) > HIGHEST_IDENTIFICATION) {
            throw new IllegalArgumentException(
                    "The last twelve digits of a microchip code are at most %d; scan again or read it again"
                            .formatted(HIGHEST_IDENTIFICATION));
        }
    }

    /**
     * Reads a code as readers and papers print it; spaces, dashes and dots do not count.
     *
     * @throws IllegalArgumentException with a sentence for the keeper
     */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static Transponder parse(String text) {
        if (text.length() > LONGEST_TEXT) {
            throw new IllegalArgumentException("This is too long for a microchip code, which is exactly 15 digits");
        }
        String code = SEPARATOR.matcher(text).replaceAll("").toUpperCase(Locale.ROOT);
        if (OLDER.matcher(code).matches()) {
            return new Transponder(code);
        }
        if (!code.matches("[0-9]*")) {
            throw new IllegalArgumentException("A microchip code (ISO 11784) is 15 digits and no letters, that of an"
                    + " older tag 9 or 10 digits or letters from A to F; one of another kind belongs in the remarks");
        }
        if (code.length() != 15) {
            throw new IllegalArgumentException(
                    "A microchip code (ISO 11784) is exactly 15 digits, and this has %d; scan again or read it again"
                            .formatted(code.length()));
        }
        return new Transponder(code);
    }

    /** By which standard it is: {@code iso-11784}, or {@code older}. */
    public String scheme() {
        return isOlder() ? "older" : "iso-11784";
    }

    private boolean isOlder() {
        return code.length() < 15;
    }

    /** Every text that differs from the code by one digit or by two neighbouring digits swapped. */
    public Set<String> neighbours() {
        var neighbours = new LinkedHashSet<String>();
        var digits = new StringBuilder(code);
        for (int at = 0; at < code.length(); at++) {
            char own = code.charAt(at);
            for (char other : (isOlder() ? OLDER_DIGITS : DIGITS).toCharArray()) {
                digits.setCharAt(at, other);
                neighbours.add(digits.toString());
            }
            digits.setCharAt(at, own);
            if (at > 0) {
                digits.setCharAt(at, code.charAt(at - 1));
                digits.setCharAt(at - 1, own);
                neighbours.add(digits.toString());
                digits.setCharAt(at - 1, code.charAt(at - 1));
                digits.setCharAt(at, own);
            }
        }
        neighbours.remove(code);
        return neighbours;
    }

    /** Whether the two codes differ by one digit or by two neighbouring digits swapped: probably one slip of a hand. */
    public boolean oneDigitOff(Transponder other) {
        if (code.length() != other.code.length()) {
            return false;
        }
        int first = firstDifference(other.code, 0);
        if (first == code.length()) {
            return false;
        }
        int second = firstDifference(other.code, first + 1);
        if (second == code.length()) {
            return true;
        }
        return second == first + 1
                && code.charAt(first) == other.code.charAt(second)
                && code.charAt(second) == other.code.charAt(first)
                && firstDifference(other.code, second + 1) == code.length();
    }

    /** What to say when an animal carries it already. */
    public String carriedBy(String animal) {
        return "The transponder %s is carried by %s; scan again, or is this the same animal registered before?"
                .formatted(code, animal);
    }

    /** What to say when an animal carries one that is a slip away. */
    public String nearTo(String other, String animal) {
        return "The transponder %s differs from %s of %s by one digit or by two that were swapped; scan again."
                .formatted(code, other, animal);
    }

    private int firstDifference(String other, int from) {
        int at = from;
        while (at < code.length() && code.charAt(at) == other.charAt(at)) {
            at++;
        }
        return at;
    }

    @Override
    @JsonValue
    public String toString() {
        return code;
    }
}
