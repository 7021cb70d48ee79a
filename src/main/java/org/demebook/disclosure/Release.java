package org.demebook.disclosure;

import java.util.Set;

/**
 * A tally of which some figures were told.
 *
 * @param told names of the figures whose value is public
 */
public record Release(Tally tally, Set<String> told) {
    public Release {
        told = Set.copyOf(told);
        told.forEach(tally.plan()::figure);
    }
}
