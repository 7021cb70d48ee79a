package org.demebook.registry;

import java.util.List;
import java.util.UUID;
import org.demebook.journal.Fact;
import org.demebook.journal.Words;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.notation.StudbookNumber;
import org.jspecify.annotations.Nullable;

/**
 * An animal came into the register, with everything that was known of it.
 *
 * @param litterId the litter that it comes from; null when it was born outside this register
 * @param sexDetermination null when nobody said how its sex was determined
 * @param removedFromDeadDam it was taken from its dam after her death
 * @param locality what is claimed of its locality; null when nothing is
 * @param identifiers its own references belong to {@code collectionId}
 */
public record AnimalRegistered(
        UUID animalId,
        StudbookNumber number,
        Sex sex,
        @Nullable RoughDate born,
        @Nullable RoughDate died,
        Origin origin,
        @Nullable SourceCode sourceCode,
        @Nullable UUID damId,
        Sire sire,
        @Nullable UUID litterId,
        boolean malformed,
        UUID collectionId,
        List<IdentifierView> identifiers,
        @Words @Nullable String notes,
        @Nullable SexDetermination sexDetermination,
        boolean removedFromDeadDam,
        @Nullable LocalityClaim locality)
        implements Fact {
    public AnimalRegistered(
            UUID animalId,
            StudbookNumber number,
            Sex sex,
            @Nullable RoughDate born,
            @Nullable RoughDate died,
            Origin origin,
            @Nullable SourceCode sourceCode,
            @Nullable UUID damId,
            Sire sire,
            @Nullable UUID litterId,
            boolean malformed,
            UUID collectionId,
            List<IdentifierView> identifiers,
            @Nullable String notes) {
        this(
                animalId,
                number,
                sex,
                born,
                died,
                origin,
                sourceCode,
                damId,
                sire,
                litterId,
                malformed,
                collectionId,
                identifiers,
                notes,
                null,
                false,
                null);
    }

    public AnimalRegistered {
        identifiers = identifiers == null ? List.of() : List.copyOf(identifiers);
    }

    @Override
    public @Nullable String validFrom() {
        return born == null ? null : born.toString();
    }
}
