package org.demebook.sheet;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.notation.StudbookNumber;
import org.demebook.notation.Transponder;
import org.demebook.registry.LocalityClaim;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/**
 * What one row says of an animal, before anybody looked at the others. Where a cell is empty or cannot be read the row
 * says nothing.
 *
 * @param row as the spreadsheet counts
 * @param dam as it was written: a number or a reference
 * @param sire its animals as they were written
 * @param locality with the locality written out
 * @param collectionLabel as it was written; empty when nothing was
 * @param collection null when it cannot be told which is meant
 */
record StatedRow(
        int row,
        @Nullable StudbookNumber number,
        @Nullable String reference,
        @Nullable String dam,
        @Nullable StatedSire sire,
        @Nullable Sex sex,
        @Nullable RoughDate born,
        @Nullable RoughDate died,
        @Nullable Origin origin,
        @Nullable SourceCode source,
        @Nullable LocalityClaim locality,
        String collectionLabel,
        @Nullable UUID collection,
        List<Transponder> transponders,
        List<String> marks,
        @Nullable String notes) {

    /** How its keeper knows it. */
    String label() {
        if (reference != null) {
            return reference;
        }
        return number != null ? number.toString() : "the animal of row " + row;
    }

    Sex sexOrUnknown() {
        return Objects.requireNonNullElse(sex, Sex.UNKNOWN);
    }

    Origin originOrUnknown() {
        return Objects.requireNonNullElse(origin, Origin.UNKNOWN);
    }
}
