package org.demebook.kinship;

import java.util.Arrays;

/** Some animal would be its own ancestor, so nothing can be computed. Carries the loop, for the keeper to correct. */
public class PedigreeLoop extends IllegalArgumentException {
    private final int[] animals;

    PedigreeLoop(int[] animals) {
        super("an animal would be its own ancestor: " + Arrays.toString(animals));
        this.animals = animals;
    }

    /**
     * The animals of the loop: each is a parent, possible parent or twin of the one before it, and the first is one of
     * the last. Starts at the smallest row.
     */
    public int[] animals() {
        return animals.clone();
    }
}
