package org.demebook.notation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The source of an animal as CITES documents give it: the codes for animals of Resolution Conf. 12.3, in JSON their
 * letter.
 *
 * <p>Kept as the document in the keeper's hand has it; which code is right is for the authority to say. The meanings
 * of R, U, W and X are from memory, the others are as in 50 CFR 23.24.
 */
public enum SourceCode {
    WILD('W', "taken from the wild"),
    RANCHED('R', "taken from the wild as egg or young and reared in a controlled environment"),
    BRED_IN_CAPTIVITY('C', "bred in captivity"),
    /** First or later generation, from a mating in a controlled environment, where C is not met. */
    BORN_IN_CAPTIVITY('F', "born in captivity, without meeting the definition of bred in captivity"),
    BRED_AT_A_REGISTERED_OPERATION('D', "of Appendix I, bred in captivity for commerce at a registered operation"),
    CONFISCATED('I', "confiscated or seized"),
    /** Stands together with another code. */
    PRE_CONVENTION('O', "acquired before the Convention applied"),
    HIGH_SEAS('X', "taken from the sea outside the jurisdiction of any state"),
    UNKNOWN('U', "unknown");

    private final char letter;
    private final String meaning;

    SourceCode(char letter, String meaning) {
        this.letter = letter;
        this.meaning = meaning;
    }

    /** The meaning in a few words of English, in lower case, to stand behind the letter. */
    public String meaning() {
        return meaning;
    }

    /**
     * Reads one letter, in either case.
     *
     * @throws IllegalArgumentException with a sentence for the keeper that lists the letters
     */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static SourceCode parse(String text) {
        String code = text.strip().toUpperCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(source -> source.letter().equals(code))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException(refusal(code)));
    }

    private static String refusal(String code) {
        if (code.equals("A")) {
            return "Source code A is for artificially propagated plants; look at the document again";
        }
        return "A CITES source code for an animal is one letter of "
                + Arrays.stream(values()).map(SourceCode::letter).collect(Collectors.joining(", "))
                + ", as printed on the document";
    }

    @JsonValue
    public String letter() {
        return String.valueOf(letter);
    }
}
