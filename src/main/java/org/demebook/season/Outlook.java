package org.demebook.season;

import java.util.List;
import java.util.Optional;

/**
 * What seasons ahead are expected to bring.
 *
 * @param years from one season to the next
 * @param seasons the first is today
 */
public record Outlook(double years, List<Ahead> seasons) {
    /**
     * The pool after a season.
     *
     * @param season 0 for today
     * @param animals in the pool
     * @param litters of this season
     * @param geneDiversity 1 − mean kinship, each animal counted as one and with itself, in [0, 1]; 0 when nobody is left
     * @param meanInbreeding of the animals; 0 when nobody is left
     */
    public record Ahead(int season, int animals, int litters, double geneDiversity, double meanInbreeding) {}

    /**
     * When gene diversity falls below a target.
     *
     * @param years from today
     * @param beyond the seasons that were looked at, by the rate of the later half of them: a guess
     */
    public record Until(double years, boolean beyond) {}

    public Outlook {
        seasons = List.copyOf(seasons);
    }

    public Ahead last() {
        return seasons.get(seasons.size() - 1);
    }

    /**
     * The share of gene diversity that a season costs, by the later half of the seasons; 0 or less where it is not falling.
     * {@code NaN} without a season ahead.
     */
    public double lossPerSeason() {
        return decline().lossPerSeason();
    }

    /** When gene diversity falls below a target in (0, 1], a straight line between two seasons; empty if it does not fall. */
    public Optional<Until> below(double target) {
        return decline().below(target);
    }

    private Decline decline() {
        return new Decline(
                years, seasons.stream().mapToDouble(Ahead::geneDiversity).toArray());
    }
}
