package org.demebook.season;

import java.util.SplittableRandom;

/**
 * What may come of a litter: there is one or none, and each of its young lives and stays in the pool, or does not, by a lot of
 * its own.
 *
 * @param born the chance that there is a litter, in (0, 1]
 * @param young how many it has then, 1 or more
 * @param each the chance of each of them that it will count, in (0, 1]
 */
public record LitterChance(double born, int young, double each) {
    public LitterChance {
        if (!(born > 0 && born <= 1 && each > 0 && each <= 1) || young < 1) {
            throw new IllegalArgumentException("no litter is born with chance " + born + ", of " + young
                    + " young, each with chance " + each + ": chances are above 0, up to 1");
        }
    }

    /** Young that count, on the mean. */
    public double expected() {
        return born * young * each;
    }

    /** By lot. */
    int draw(SplittableRandom random) {
        int count = 0;
        if (random.nextDouble() < born) {
            for (int i = 0; i < young; i++) {
                count += random.nextDouble() < each ? 1 : 0;
            }
        }
        return count;
    }
}
