package org.demebook.season;

/**
 * What an animal of the pool weighs by how long it is still expected to stay, against a young of this season: a season further
 * on counts a quarter. So a plan looks beyond the next season, and beyond those who leave soon.
 *
 * <p>Source: our own choice, on simulated populations; docs/methods/season.md.
 */
public final class StayWeight {
    private static final double NEXT = .25;

    private StayWeight() {}

    /**
     * In [0, 1].
     *
     * @param seasonsLeft after how many seasons from now it is still there and may breed; 0 for one that leaves before the young
     *     of this season count
     * @param seasonsOfYoung in how many seasons a young of this season will be there, above 0
     */
    public static double of(double seasonsLeft, double seasonsOfYoung) {
        if (!(seasonsLeft >= 0) || !(seasonsOfYoung > 0)) {
            throw new IllegalArgumentException(
                    "nobody stays for " + seasonsLeft + " seasons where a young stays for " + seasonsOfYoung);
        }
        return Math.min(1, worth(seasonsLeft) / worth(seasonsOfYoung));
    }

    /** 1 + ¼ + 1/16 + …, so many seasons of it. */
    private static double worth(double seasons) {
        double whole = StrictMath.floor(seasons);
        double next = StrictMath.pow(NEXT, whole);
        return (1 - next) / (1 - NEXT) + (seasons - whole) * next;
    }
}
