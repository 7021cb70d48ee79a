package org.demebook.season;

/**
 * How the seasons are assumed to go.
 *
 * @param years from one season to the next, above 0
 * @param litters wanted in each, fewer where there are not enough who may breed; 0 or more
 * @param chance of each litter
 * @param matures seasons from birth to the first litter, 1 or more: with 1 in the season after that of its birth
 * @param stays in how many seasons after that of its birth an animal is there; not below {@code matures}
 * @param rests seasons between two litters of a female, 0 or more
 * @param littersOfMale in a season at most, 1 or more
 * @param inbreedingAtMost of the young; where too few litters are left, twice as much, and so on
 * @param places animals that can be kept; the oldest make room. {@link Season#NO_LIMIT} where that does not bind
 */
public record Course(
        double years,
        int litters,
        LitterChance chance,
        int matures,
        int stays,
        int rests,
        int littersOfMale,
        double inbreedingAtMost,
        int places) {
    public Course {
        if (!(years > 0) || litters < 0 || matures < 1 || stays < matures || rests < 0) {
            throw new IllegalArgumentException("a season of " + years + " years with " + litters
                    + " litters of animals that breed from " + matures + " to " + stays + " and rest " + rests);
        }
        if (littersOfMale < 1 || !(inbreedingAtMost > 0) || places < 1) {
            throw new IllegalArgumentException("nobody can breed with " + littersOfMale
                    + " litters of a male, inbreeding up to " + inbreedingAtMost + " and " + places + " places");
        }
    }

    /** Young that are expected of a season. */
    double expected() {
        return litters * chance.expected();
    }

    /** Animals that breed and stay for some seasons longer, with as many fewer litters in each as leaves the pool its size. */
    public Course later(int seasons) {
        int fewer = (int) Math.max(1, Math.round(litters * (double) stays / (stays + seasons)));
        return new Course(
                years,
                Math.min(litters, fewer),
                chance,
                matures + seasons,
                stays + seasons,
                rests,
                littersOfMale,
                inbreedingAtMost,
                places);
    }
}
