package org.demebook.registry;

import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What the rules of parentage look at, whether an animal is registered already or stands in a sheet.
 *
 * @param label how the keeper knows it: its number, or its reference in their sheet
 * @param sexDetermination null when nobody said how its sex was determined
 * @param removedFromDeadDam it was taken from its dam after her death
 * @param locality what is claimed of its locality; null when nothing is
 */
public record Kin(
        String label,
        Sex sex,
        @Nullable RoughDate born,
        @Nullable RoughDate died,
        @Nullable SexDetermination sexDetermination,
        boolean removedFromDeadDam,
        @Nullable LocalityClaim locality) {
    public Kin(
            String label,
            Sex sex,
            @Nullable RoughDate born,
            @Nullable RoughDate died,
            @Nullable SexDetermination sexDetermination,
            boolean removedFromDeadDam) {
        this(label, sex, born, died, sexDetermination, removedFromDeadDam, null);
    }

    public Kin(String label, Sex sex, @Nullable RoughDate born, @Nullable RoughDate died) {
        this(label, sex, born, died, null, false);
    }
}
