package org.demebook.registry;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An animal to be registered that no litter of this register brought: a founder, or one from outside.
 *
 * @param sex as far as it is known
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
        @Nullable @Size(max = 60) String dam,
        @Nullable @Valid StatedSire sire,
        @Nullable UUID collection,
        @Nullable @Size(min = 1, max = 60) String ownReference,
        @Nullable @Size(max = 20) List<@NotNull @Size(max = 40) String> transponders,
        @Nullable @Size(max = 20) List<@NotNull @Size(min = 1, max = 200) String> marks,
        @Nullable @Size(max = 2000) String notes) {}
