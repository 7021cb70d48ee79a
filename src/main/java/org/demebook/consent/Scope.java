package org.demebook.consent;

import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which animals a grant is about.
 *
 * @param animalIds these; null for whatever the collection has a say in, now and later
 */
public record Scope(@Nullable Set<UUID> animalIds) {
    public static final Scope WHOLE_COLLECTION = new Scope(null);

    public Scope {
        animalIds = animalIds == null ? null : Set.copyOf(animalIds);
    }

    public static Scope animals(Set<UUID> animalIds) {
        return new Scope(animalIds);
    }
}
