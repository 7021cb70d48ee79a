package org.demebook.breeding;

import jakarta.persistence.Converter;
import org.demebook.gestation.HowKnown;
import org.demebook.notation.TextColumn;

/** How the values of this room stand in a column. */
final class Columns {
    private Columns() {}

    @Converter(autoApply = true)
    static class OfSignKind extends TextColumn<SignKind> {
        OfSignKind() {
            super(SignKind::word, SignKind::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfHowKnown extends TextColumn<HowKnown> {
        OfHowKnown() {
            super(HowKnown::word, HowKnown::parse);
        }
    }
}
