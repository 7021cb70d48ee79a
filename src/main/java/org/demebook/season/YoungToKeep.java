package org.demebook.season;

import java.util.List;
import java.util.OptionalInt;

/**
 * How many young of a litter may stay in the pool, where that is to be chosen too: whole numbers from 1 on.
 *
 * @param most by female, 1 or more
 * @param total young of all litters together; empty where any number may stay
 */
public record YoungToKeep(List<Integer> most, OptionalInt total) {
    public YoungToKeep {
        most = List.copyOf(most);
        if (most.stream().anyMatch(young -> young < 1)) {
            throw new IllegalArgumentException("of a litter at least one young stays, not " + most);
        }
    }
}
