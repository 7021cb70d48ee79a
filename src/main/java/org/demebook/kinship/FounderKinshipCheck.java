package org.demebook.kinship;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Whether animals could have the kinships that are told of founders: relationships are a matrix of covariances, and by
 * Gauss' elimination no pivot of it may be below 0. O(related founders³).
 */
final class FounderKinshipCheck {
    private static final double ROUNDING = 1e-9;

    private final int[] founders;
    private final double[][] kinship;

    private FounderKinshipCheck(PedigreeBuilder told) {
        founders = IntStream.range(0, told.dnaPairs)
                .flatMap(pair -> IntStream.of(told.dnaA[pair], told.dnaB[pair]))
                .sorted()
                .distinct()
                .toArray();
        kinship = new double[founders.length][founders.length];
        for (int i = 0; i < founders.length; i++) {
            kinship[i][i] = (1 + told.extra[founders[i]]) / 2;
        }
        for (int pair = 0; pair < told.dnaPairs; pair++) {
            int i = Arrays.binarySearch(founders, told.dnaA[pair]);
            int j = Arrays.binarySearch(founders, told.dnaB[pair]);
            kinship[i][j] = told.dnaKinship[pair];
            kinship[j][i] = told.dnaKinship[pair];
        }
    }

    /** @throws IllegalStateException if no animals could have them */
    static void require(PedigreeBuilder told) {
        new FounderKinshipCheck(told).eliminate();
    }

    private void eliminate() {
        for (int k = 0; k < founders.length; k++) {
            double pivot = kinship[k][k];
            if (pivot < -ROUNDING) {
                throw contradiction(k);
            }
            for (int i = k + 1; i < founders.length; i++) {
                if (pivot < ROUNDING && Math.abs(kinship[i][k]) > ROUNDING) {
                    throw contradiction(i);
                }
                double share = pivot < ROUNDING ? 0 : kinship[i][k] / pivot;
                for (int j = k; j < founders.length; j++) {
                    kinship[i][j] -= share * kinship[k][j];
                }
            }
        }
    }

    private IllegalStateException contradiction(int founder) {
        return new IllegalStateException(
                "no animals have such kinships: founder " + founders[founder] + " cannot have its"
                        + " own with those before it; check the values, or leave the least certain of them out");
    }
}
