package org.demebook.registry;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.problem.LeftAsIs;
import org.jspecify.annotations.Nullable;

/**
 * An animal to be registered that no litter of this register brought: a founder, or one from outside.
 *
 * @param sex as far as it is known
 * @param sexDetermination how the sex was determined; nothing when you cannot say
 * @param removedFromDeadDam true when it was taken from its dam after her death
 * @param locality where it or its founders come from; nothing when it is of the population's locality, as is said
 * @param leave what is as it is although a rule speaks against it
 * @param born as precisely as it is known; nothing when it is not
 * @param dam studbook number; nothing when unknown
 * @param sire nothing when unknown
 * @param collection id of the collection that holds it; nothing when you act for one alone
 * @param ownReference what you call it in your own lists; yours alone, and only once
 */
public record NewAnimal(
        @NotNull Sex sex,
        @Nullable RoughDate born,
        @Nullable RoughDate died,
        @NotNull Origin origin,
        @Nullable SourceCode sourceCode,
        @Nullable @Size(max = LONGEST_REFERENCE) String dam,
        @Nullable @Valid StatedSire sire,
        @Nullable UUID collection,
        @Nullable @Size(min = 1, max = LONGEST_REFERENCE) String ownReference,
        @Nullable @Size(max = MOST_MARKS) List<@NotNull @Size(max = 40) String> transponders,
        @Nullable @Size(max = MOST_MARKS) List<@NotNull @Size(min = 1, max = LONGEST_MARK) String> marks,
        @Nullable @Size(max = LONGEST_NOTES) String notes,
        @Nullable @Valid SexDetermination sexDetermination,
        @Nullable Boolean removedFromDeadDam,
        @Nullable @Valid LocalityClaim locality,
        @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {
    public static final int LONGEST_REFERENCE = 60;
    public static final int LONGEST_MARK = 200;
    public static final int LONGEST_NOTES = 2000;
    /** As many transponders, and as many marks. */
    public static final int MOST_MARKS = 20;
}
