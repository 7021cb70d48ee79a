package org.demebook.consent;

import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a decision is about: an animal, or a record about one.
 *
 * @param parties the collections that have a say: of an animal the one that holds it and the one that owns it, of a record
 *     the one that wrote it; with none, nobody may see it
 */
public record Subject(UUID animalId, Set<UUID> parties) {
    /** An animal: the collections that hold and own it have a say, dead or alive. */
    public static Subject of(UUID animalId, @Nullable UUID holder, @Nullable UUID owner) {
        if (holder == null || holder.equals(owner)) {
            return new Subject(animalId, owner == null ? Set.of() : Set.of(owner));
        }
        return new Subject(animalId, owner == null ? Set.of(holder) : Set.of(holder, owner));
    }
}
