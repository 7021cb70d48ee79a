package org.demebook.signing;

/** What strangers sent, and why it is not accepted. */
public final class Malformed extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** The first thing that is wrong, in the order in which a reader looks. */
    public enum Fault {
        /** more bytes, or more keys, than the reader takes */
        TOO_LARGE,
        /** objects and arrays nested beyond {@link CanonicalJson#MOST_DEPTH} */
        TOO_DEEP,
        /** bytes that are no UTF-8 */
        NOT_UTF8,
        NOT_JSON,
        /** a name that stands twice in one object */
        DUPLICATE_NAME,
        /** a fraction, an exponent, a negative zero, or beyond ±(2⁵³ − 1) */
        UNSAFE_NUMBER,
        /** half of a surrogate pair */
        LONE_SURROGATE,
        /** a code point that Unicode will never assign a character to */
        NONCHARACTER,
        /** well-formed, but not the one form in which it may be written */
        NOT_CANONICAL,
        /** parts or a header other than those of a signature here */
        WRONG_HEADER,
        /** other characters, padding, or bits beyond the last byte */
        NOT_BASE64URL,
        /** no key that may be used here, or one that does not follow from the one before */
        WRONG_KEY,
        WRONG_SIGNATURE,
        NOT_A_CHECKPOINT
    }

    private final Fault fault;

    public Malformed(Fault fault, String message) {
        super(message);
        this.fault = fault;
    }

    public Fault fault() {
        return fault;
    }
}
