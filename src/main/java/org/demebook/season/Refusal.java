package org.demebook.season;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What it costs if a litter of the plan is refused and the season solved anew around that.
 *
 * @param litter of the plan
 * @param what is refused
 * @param cost gene diversity after the season that is lost, at most: the new plan is searched for near the old one. Empty if no
 *     plan is left. Below 0 where the search came upon a better plan than the first
 * @param instead pairs that the new plan has and the old had not
 */
public record Refusal(Pair litter, What what, OptionalDouble cost, List<Pair> instead) {
    public enum What {
        THIS_PAIR,
        ANY_LITTER_OF_HERS,
        ANY_LITTER_OF_HIS
    }

    public Refusal {
        instead = List.copyOf(instead);
    }
}
