package org.demebook.planning;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a collection can bear in the coming season. Whoever states it consents that plans count the collection's animals as
 * living together. What is left out was not said, and limits nothing.
 *
 * @param littersAtMost litters that may be born there: room for their young
 * @param malesAwayAtMost males of the collection that may be away from it
 * @param farthestKilometres an animal goes to a region, or comes from one, no farther away than this
 * @param mayCrossBorders whether an animal may go where it needs a permit, or come from there
 * @param exchangeWith the regions that animals go to and come from, besides the collection's own; empty: none besides it
 * @param notes in your words, for those who act for the collection
 */
public record PairingTerms(
        @Nullable @Min(0) @Max(1000) Integer littersAtMost,
        @Nullable @Min(0) @Max(1000) Integer malesAwayAtMost,
        @Nullable @Min(0) @Max(20_000) Integer farthestKilometres,
        @Nullable Boolean mayCrossBorders,
        @Nullable @Size(max = 12) List<@NotBlank @Size(max = 40) String> exchangeWith,
        @Nullable @Size(max = 500) String notes) {
    /** Nothing was said. */
    static final PairingTerms NONE = new PairingTerms(null, null, null, null, null, null);

    public PairingTerms {
        exchangeWith = exchangeWith == null ? null : exchangeWith.stream().toList();
    }

    PairingTerms withoutNotes() {
        return new PairingTerms(
                littersAtMost, malesAwayAtMost, farthestKilometres, mayCrossBorders, exchangeWith, null);
    }
}
