package org.demebook.notation;

/**
 * The check character of ISO/IEC 7064, MOD 37-2: one character more, and a single mistyped character or two
 * neighbours swapped are always noticed.
 *
 * <p>Works on the digits, the letters A to Z in upper case and, as check character only, the asterisk.
 */
final class CheckCharacter {
    private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
    private static final int MODULUS = 37;
    private static final int RADIX = 2;

    private CheckCharacter() {}

    /**
     * The character to append to {@code characters}.
     *
     * @throws IllegalArgumentException if a character is neither a digit nor an upper-case letter A to Z
     */
    static char of(String characters) {
        return ALPHABET.charAt(Math.floorMod(1 - weigh(characters), MODULUS));
    }

    /** Whether {@code check} is the check character of {@code characters}. */
    static boolean fits(String characters, char check) {
        return of(characters) == check;
    }

    private static int weigh(String characters) {
        int sum = 0;
        for (int i = 0; i < characters.length(); i++) {
            sum = (sum + value(characters.charAt(i))) * RADIX % MODULUS;
        }
        return sum;
    }

    private static int value(char character) {
        int value = ALPHABET.indexOf(character);
        if (value < 0 || character == '*') {
            throw new IllegalArgumentException("Only digits and the letters A to Z can be checked");
        }
        return value;
    }
}
