package org.demebook.registry;

import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What the rules of parentage look at, whether an animal is registered already or stands in a sheet.
 *
 * @param label how the keeper knows it: its number, or its reference in their sheet
 */
public record Kin(
        String label,
        Sex sex,
        @Nullable RoughDate born,
        @Nullable RoughDate died) {}
