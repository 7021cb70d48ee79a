package org.demebook.season;

import java.util.List;

/**
 * Who of the living carries a founder's genes, and what depends on them.
 *
 * @param founder row; may be alive itself
 * @param share of the pool's genes that is expected to be this founder's, in (0, 1]
 * @param carriers all of the living with an expected share of its genes, largest share first
 * @param lost gene diversity after the season that is missing if none of the carriers has its planned litter; below 0 where
 *     those litters harm it
 */
public record FounderLine(int founder, double share, List<Carrier> carriers, double lost) {
    /**
     * An animal with genes of the founder.
     *
     * @param share of its genes that is expected to be the founder's, in (0, 1]; 1 for the founder
     * @param now it may breed this season
     * @param later it may breed in a season after this one
     */
    public record Carrier(int row, double share, boolean now, boolean later) {}

    public FounderLine {
        carriers = List.copyOf(carriers);
    }

    /** Who may still hand its genes on this season. */
    public List<Carrier> chances() {
        return carriers.stream().filter(Carrier::now).toList();
    }

    /** If nobody of {@link #chances} has a litter this season, its genes die with those who carry them. */
    public boolean isLastChance() {
        return carriers.stream().anyMatch(Carrier::now) && carriers.stream().noneMatch(Carrier::later);
    }
}
