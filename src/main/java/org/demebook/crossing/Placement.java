package org.demebook.crossing;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * Who keeps an adopted animal on this node from now on.
 *
 * @param to sign-in name of a member of the population; it comes into their first collection
 * @param number studbook number, as its keeper shows it; needed where it was not told, else it can be left out
 */
public record Placement(
        @NotNull @Size(min = 1, max = 40) String to,
        @Nullable @Size(max = 60) String number) {}
