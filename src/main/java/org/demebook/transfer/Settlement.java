package org.demebook.transfer;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * A coordinator's decision of a dispute.
 *
 * @param outcome upheld: the animal is where it was reported, and moves there; dismissed: it is where the register has it
 * @param reason what it rests on; all sides see it
 */
public record Settlement(
        @NotNull Outcome outcome,

        @NotNull @Size(min = 3, max = 500) String reason) {}
