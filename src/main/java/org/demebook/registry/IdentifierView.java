package org.demebook.registry;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.demebook.journal.Words;
import org.demebook.notation.Transponder;
import org.jspecify.annotations.Nullable;

/**
 * What an animal is known by besides its number.
 *
 * @param kind {@code transponder}, {@code mark} (in words), or {@code own-reference} (yours alone)
 * @param value of a transponder 15 digits (ISO 11784), or 9 or 10 digits or letters from A to F of an older tag
 * @param scheme by which standard a transponder is, {@code iso-11784} or {@code older}; absent otherwise, and need not be sent
 * @param written as it was written where that differs from the value; absent otherwise, and need not be sent
 */
public record IdentifierView(
        @NotNull @Pattern(regexp = "transponder|mark|own-reference", message = "is transponder, mark or own-reference")
        String kind,

        @Words @NotNull @Size(min = 1, max = 200) String value,
        @Nullable @Size(max = 20) String scheme,
        @Words @Nullable @Size(max = 200) String written)
        implements Words.Sometimes {
    public IdentifierView(String kind, String value) {
        this(kind, value, null, null);
    }

    /** A transponder as it is compared, and as it was written where that differs. */
    public static IdentifierView of(Transponder transponder, String written) {
        return new IdentifierView(
                Identifier.TRANSPONDER,
                transponder.code(),
                transponder.scheme(),
                transponder.scheme().equals("older") && !transponder.code().equals(written) ? written : null);
    }

    /** A transponder is what it is; everything else is as its keeper calls it. */
    @Override
    public boolean inOwnWords() {
        return !Identifier.TRANSPONDER.equals(kind);
    }

    /** Whether it is the same, however it was written. */
    boolean isSame(IdentifierView other) {
        return kind.equals(other.kind) && value.equals(other.value);
    }
}
