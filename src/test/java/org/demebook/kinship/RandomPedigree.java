package org.demebook.kinship;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.function.IntUnaryOperator;

/** A pedigree made up from a seed, which can be told in any order and numbering. */
final class RandomPedigree {
    private final SplittableRandom random;
    private final int animals;
    private final boolean allKinds;
    private final long seed;

    private RandomPedigree(long seed, int animals, boolean allKinds) {
        this.seed = seed;
        this.animals = animals;
        this.allKinds = allKinds;
        random = new SplittableRandom(seed);
    }

    /** @param allKinds whether fatherless young, twins and uncertain sires are among them */
    static RandomPedigree of(long seed, int animals, boolean allKinds) {
        return new RandomPedigree(seed, animals, allKinds);
    }

    Pedigree build() {
        return build(row -> row);
    }

    /** @param rowOf the number under which each animal is told; they are told by that number */
    Pedigree build(IntUnaryOperator rowOf) {
        var births = new Birth[animals];
        int[] litter = null;
        for (int i = 0; i < animals; i++) {
            var birth = birth(i, rowOf);
            births[rowOf.applyAsInt(i)] = birth;
        }
        var builder = Pedigree.builder(animals);
        for (var birth : births) {
            birth.tell(builder);
        }
        return builder.build();
    }
}
