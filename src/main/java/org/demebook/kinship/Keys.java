package org.demebook.kinship;

import java.util.Arrays;

/** Which animal comes first where births alone do not say: the one with the smaller key. */
final class Keys {
    private final PedigreeBuilder told;
    private final Generations generations;
    /** By row, the twin with the smallest key, who is its own where there is none. */
    private final int[] smallestTwin;
    /** By hidden male, the young with the smallest key, his own or of males mixed from him; −1 for none. */
    private final int[] firstYoung;

    Keys(PedigreeBuilder told, Generations generations) {
        this.told = told;
        this.generations = generations;
        smallestTwin = new int[told.animals];
        firstYoung = new int[told.males];
        findTwins();
        findYoung();
    }

    private void findTwins() {
        for (int row = 0; row < told.animals; row++) {
            smallestTwin[row] = row;
        }
        for (int row = 0; row < told.animals; row++) {
            int animal = generations.self[row];
            smallestTwin[animal] = smaller(smallestTwin[animal], row);
        }
    }

    private void findYoung() {
        Arrays.fill(firstYoung, -1);
        for (int row = 0; row < told.animals; row++) {
            if (generations.isOneself(row)) {
                offerToMales(row, smallestTwin[row]);
            }
        }
        // A male's candidates are told before him, so one pass backwards reaches the males among them.
        for (int male = told.males - 1; male >= 0; male--) {
            if (isInUse(male)) {
                offerToMales(told.animals + male, firstYoung[male]);
            }
        }
    }

    private void offerToMales(int entity, int young) {
        for (int p = 0; p < generations.parents(entity); p++) {
            int male = generations.parent(entity, p) - told.animals;
            if (male >= 0) {
                firstYoung[male] = firstYoung[male] < 0 ? young : smaller(firstYoung[male], young);
            }
        }
    }

    private int smaller(int row, int other) {
        return told.compareKeys(row, other) <= 0 ? row : other;
    }

    int compareAnimals(int animal, int other) {
        return told.compareKeys(smallestTwin[animal], smallestTwin[other]);
    }

    int compareMales(int male, int other) {
        return told.compareKeys(firstYoung[male], firstYoung[other]);
    }

    int smallestTwin(int animal) {
        return smallestTwin[animal];
    }

    /** Whether a hidden male has young. */
    boolean isInUse(int male) {
        return firstYoung[male] >= 0;
    }
}
