package org.demebook.season;

import java.util.List;

/**
 * No plan keeps all constraints.
 *
 * @param contradiction constraints that cannot be kept together; without any one of them the others can
 */
public record ImpossibleSeason(List<Constraint> contradiction) implements Planned {
    public ImpossibleSeason {
        contradiction = List.copyOf(contradiction);
    }
}
