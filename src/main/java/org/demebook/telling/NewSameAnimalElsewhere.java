package org.demebook.telling;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * A claim that an animal of yours is one that another node registered.
 *
 * @param animal studbook number of your animal, which this node registered
 * @param other the other's studbook number, where it is shown to you; else its name between nodes ({@code uuid@node}), as its keeper
 *     reads it there
 */
public record NewSameAnimalElsewhere(
        @NotNull @Size(max = 60) String animal,
        @NotNull @Size(max = 100) String other) {}
