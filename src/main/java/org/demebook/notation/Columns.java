package org.demebook.notation;

import jakarta.persistence.Converter;

/** How the value classes of this room stand in a column: by the words that they have in JSON. */
final class Columns {
    private Columns() {}

    @Converter(autoApply = true)
    static class OfSex extends TextColumn<Sex> {
        OfSex() {
            super(Sex::word, Sex::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfOrigin extends TextColumn<Origin> {
        OfOrigin() {
            super(Origin::word, Origin::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfSourceCode extends TextColumn<SourceCode> {
        OfSourceCode() {
            super(SourceCode::letter, SourceCode::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfRoughDate extends TextColumn<RoughDate> {
        OfRoughDate() {
            super(RoughDate::toString, RoughDate::parse);
        }
    }
}
