package org.demebook.problem;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;

/**
 * A keeper's word that something is as it is, although a rule speaks against it.
 *
 * @param rule the rule's word, such as {@code dam-too-young}
 * @param reason how it is known; kept with the record and shown beside it
 */
public record LeftAsIs(
        @NotNull @Size(max = 60) String rule,

        @NotNull @Size(min = SHORTEST_REASON, max = LONGEST_REASON)
        String reason) {
    public static final int SHORTEST_REASON = 3;
    public static final int LONGEST_REASON = 500;
}
