package org.demebook.season;

import java.util.List;

/**
 * A plan that weighs inbreeding: none that was found is better in one of the two figures and not worse in the other.
 *
 * @param meanKinship of the pool after the season
 * @param meanInbreeding of the young
 */
public record TradeOff(double meanKinship, double meanInbreeding, List<Pair> pairs) {
    public TradeOff {
        pairs = List.copyOf(pairs);
    }
}
