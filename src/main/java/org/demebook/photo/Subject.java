package org.demebook.photo;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What a photograph shows: an animal, or a litter at a moment. Exactly one of the two ids is there. */
public record Subject(
        @Nullable UUID animalId,
        @Nullable UUID litterId,
        @Nullable Moment moment) {
    public static Subject animal(UUID id) {
        return new Subject(id, null, null);
    }

    public static Subject litter(UUID id, Moment moment) {
        return new Subject(null, id, moment);
    }
}
