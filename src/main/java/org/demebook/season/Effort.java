package org.demebook.season;

/**
 * How much is tried. Counted, not timed, so that the same season gives the same plan on every machine.
 *
 * @param boundSteps about so many steps towards the bound at most, 1 or more
 * @param starts from so many plans the search begins, 1 or more
 * @param moves so many changes are tried from each of them
 * @param seed of the search's random numbers
 */
public record Effort(int boundSteps, int starts, long moves, long seed) {
    public static final Effort USUAL = new Effort(300, 3, 1_000_000, 1);

    public Effort {
        if (boundSteps < 1 || starts < 1 || moves < 0) {
            throw new IllegalArgumentException("an effort needs a step and a start: " + boundSteps + ", " + starts);
        }
    }
}
