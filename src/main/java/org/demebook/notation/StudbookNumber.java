package org.demebook.notation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Comparator;
import java.util.Locale;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * The permanent public number of one animal in its population, written {@code MC-H-102-Y}: population code, code of
 * the issuing node, serial without padding, and the check character of ISO/IEC 7064 MOD 37-2 over the three.
 *
 * <p>The check character catches every single mistyped character and every swap of two neighbours. It does not see
 * the hyphens: a hyphen moved by one place is caught only where no such population or node exists.
 *
 * <p>Sorts by population, node and serial.
 *
 * @param populationCode 2 to 6 digits or upper-case letters A to Z, a letter first
 * @param nodeCode 1 to 4 digits or upper-case letters A to Z; a node's own does not begin with 0
 * @param serial from 1 to 999 999 999 999, counted by the issuing node within the population
 */
public record StudbookNumber(String populationCode, String nodeCode, long serial)
        implements Comparable<StudbookNumber> {

    private static final Comparator<StudbookNumber> ORDER = Comparator.comparing(StudbookNumber::populationCode)
            .thenComparing(StudbookNumber::nodeCode)
            .thenComparingLong(StudbookNumber::serial);

    private static final Pattern POPULATION_CODE = Pattern.compile("[A-Z][A-Z0-9]{1,5}");
    private static final Pattern NODE_CODE = Pattern.compile("[A-Z0-9]{1,4}");
    private static final Pattern SERIAL = Pattern.compile("[1-9][0-9]{0,11}");
    private static final long HIGHEST_SERIAL = 999_999_999_999L;
    private static final String NOBODY = "0";

    private static final int LONGEST_TEXT = 60;
    private static final Pattern DASH = Pattern.compile("[\\p{Pd}\\u2212\\u00AD]");
    private static final Pattern SPACE = Pattern.compile("[\\s\\p{Z}\\u200B\\uFEFF]+");
    private static final Pattern ALLOWED = Pattern.compile("[A-Za-z0-9*\\- ]*");
    private static final String HOW_TO_WRITE_IT =
            "Write it with its hyphens: population, node, serial, check character, like "
                    + new StudbookNumber("MC", "H", 102);

    public StudbookNumber {
        if (!POPULATION_CODE.matcher(populationCode).matches()) {
            throw new IllegalArgumentException(
                    "A population code is 2 to 6 letters or digits and starts with a letter, like MC");
        }
        if (!NODE_CODE.matcher(nodeCode).matches()) {
            throw new IllegalArgumentException("A node code is 1 to 4 letters or digits, like H");
        }
        if (serial < 1 || serial > HIGHEST_SERIAL) {
            throw new IllegalArgumentException("A serial counts from 1 and has at most 12 digits");
        }
    }

    /**
     * Reads a number as people write it: in either case, with spaces, with any kind of dash, or with spaces in place
     * of dashes.
     *
     * @throws IllegalArgumentException with a sentence for the keeper, if it cannot be read in one way only or does
     *     not fit its check character
     */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static StudbookNumber parse(String text) {
        String[] parts = partsOf(text);
        if (!SERIAL.matcher(parts[2]).matches()) {
            throw new IllegalArgumentException(
                    "The third part of a studbook number is its serial: digits only, at most 12, no zero in front. "
                            + HOW_TO_WRITE_IT);
        }
        if (parts[3].length() != 1) {
            throw new IllegalArgumentException(
                    "A studbook number ends in exactly one check character. " + HOW_TO_WRITE_IT);
        }
        var number = new StudbookNumber(parts[0], parts[1], Long.parseLong(parts[2]));
        if (!CheckCharacter.fits(number.checkedCharacters(), parts[3].charAt(0))) {
            throw new IllegalArgumentException(
                    ("%s does not fit its check character: one character was mistyped or two were swapped; "
                                    + "read it again")
                            .formatted(String.join("-", parts)));
        }
        return number;
    }

    /**
     * A number that is nobody's, for an animal whose own is not told: it orders the animal among the others, alike for everybody, and is
     * never shown. Node codes that begin with 0 are kept for these.
     */
    public static StudbookNumber placeholder(String populationCode, UUID id) {
        long drawn = id.getMostSignificantBits() * 31 + id.getLeastSignificantBits();
        return new StudbookNumber(populationCode, NOBODY, 1 + Math.floorMod(drawn, HIGHEST_SERIAL));
    }

    /** Whether a written number is one of these. */
    public static boolean isPlaceholder(String written) {
        return written.startsWith("-" + NOBODY, written.indexOf('-'));
    }

    /** Whether numbers of this code are no node's to issue. */
    public static boolean isReserved(String nodeCode) {
        return nodeCode.startsWith(NOBODY);
    }

    private static String[] partsOf(String text) {
        if (text.length() > LONGEST_TEXT) {
            throw new IllegalArgumentException("This is too long for a studbook number. " + HOW_TO_WRITE_IT);
        }
        String plain = SPACE.matcher(DASH.matcher(text).replaceAll("-"))
                .replaceAll(" ")
                .strip();
        if (!ALLOWED.matcher(plain).matches()) {
            throw new IllegalArgumentException(
                    "A studbook number holds only digits, the letters A to Z, hyphens and perhaps an asterisk at the"
                            + " end. " + HOW_TO_WRITE_IT);
        }
        plain = plain.toUpperCase(Locale.ROOT);
        String[] parts = plain.split("[ -]+", -1);
        if (parts.length != 4) {
            parts = plain.replace(" ", "").split("-+", -1); // spaces inside a part, as in MC-H-1 002-X
        }
        if (parts.length == 3) {
            throw new IllegalArgumentException(
                    "This studbook number has three parts, not four: is its check character missing? "
                            + HOW_TO_WRITE_IT);
        }
        if (parts.length != 4) {
            throw new IllegalArgumentException("This does not read as a studbook number. " + HOW_TO_WRITE_IT);
        }
        return parts;
    }

    private String checkedCharacters() {
        return populationCode + nodeCode + serial;
    }

    @Override
    public int compareTo(StudbookNumber other) {
        return ORDER.compare(this, other);
    }

    @Override
    @JsonValue
    public String toString() {
        return populationCode + "-" + nodeCode + "-" + serial + "-" + CheckCharacter.of(checkedCharacters());
    }
}
