package org.demebook.season;

import java.util.List;

/**
 * No plan keeps all constraints.
 *
 * @param contradiction constraints that cannot be kept together; without any one of them the others can
 * @param smallest no contradiction has fewer constraints; false where that was not proven within the work allowed
 */
public record ImpossibleSeason(List<Constraint> contradiction, boolean smallest) implements Planned {
    public ImpossibleSeason {
        contradiction = List.copyOf(contradiction);
    }
}
