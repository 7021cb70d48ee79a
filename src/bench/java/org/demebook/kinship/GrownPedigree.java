package org.demebook.kinship;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * A deep pedigree, grown from a seed: sixty years of overlapping generations in sub-populations of 160 births a year, two
 * litters in a hundred by a sire from elsewhere, three to seven young in a litter, parents at most four years old. At a
 * million animals the average one has some 1 700 ancestors, one of the last year 5 000.
 */
final class GrownPedigree {
    private static final int YEARS = 60;
    private static final int BIRTHS = 160;
    private static final int SIRES = BIRTHS / 20;
    private static final int BREEDING_YEARS = 4;
    private static final double EXCHANGE = .02;
    private static final int FIRST_YEARS_WITHOUT_PARENTS = 2;
    private static final int YEARS_OF_LIFE = 7;

    private final SplittableRandom random = new SplittableRandom(7);
    private final List<ArrayDeque<int[]>> males = new ArrayList<>();
    private final List<ArrayDeque<int[]>> females = new ArrayList<>();
    private final int demes;
    private final int births;

    private int[] sire;
    private int[] dam;
    private int[] year;
    private int animals;

    /** @param atMost about as many animals; a few less, so that all sub-populations are of one size */
    GrownPedigree(int atMost) {
        int perYear = atMost / YEARS;
        demes = Math.max(1, perYear / BIRTHS);
        births = perYear / demes;
        sire = new int[atMost];
        dam = new int[atMost];
        year = new int[atMost];
        for (int deme = 0; deme < demes; deme++) {
            males.add(new ArrayDeque<>());
            females.add(new ArrayDeque<>());
        }
        for (int now = 0; now < YEARS; now++) {
            growOneYear(now);
        }
        sire = Arrays.copyOf(sire, animals);
        dam = Arrays.copyOf(dam, animals);
        year = Arrays.copyOf(year, animals);
    }

    private void growOneYear(int now) {
        List<int[]> newMales = new ArrayList<>();
        List<int[]> newFemales = new ArrayList<>();
        for (int deme = 0; deme < demes; deme++) {
            bear(deme, now, newMales, newFemales);
        }
        for (int deme = 0; deme < demes; deme++) {
            add(newMales.get(deme), males.get(deme));
            add(newFemales.get(deme), females.get(deme));
        }
    }

    private static void add(int[] born, ArrayDeque<int[]> cohorts) {
        cohorts.addLast(born);
        if (cohorts.size() > BREEDING_YEARS) {
            cohorts.removeFirst();
        }
    }

    private void bear(int deme, int now, List<int[]> newMales, List<int[]> newFemales) {
        boolean founders = now < FIRST_YEARS_WITHOUT_PARENTS;
        int[] sires = new int[SIRES];
        for (int i = 0; !founders && i < SIRES; i++) {
            sires[i] = anyOf(males.get(deme));
        }
        int[] bornMales = new int[births];
        int[] bornFemales = new int[births];
        int maleCount = 0;
        int femaleCount = 0;
        int made = 0;
        while (made < births && animals < sire.length) {
            int itsSire = Pedigree.UNKNOWN;
            int itsDam = Pedigree.UNKNOWN;
            int litter = 5;
            if (!founders) {
                itsSire = sires[random.nextInt(SIRES)];
                if (random.nextDouble() < EXCHANGE) {
                    itsSire = anyOf(males.get(random.nextInt(demes)));
                }
                itsDam = anyOf(females.get(deme));
                litter = 3 + random.nextInt(5);
            }
            for (int i = 0; i < litter && made < births && animals < sire.length; i++, made++) {
                sire[animals] = itsSire;
                dam[animals] = itsDam;
                year[animals] = now;
                if (random.nextBoolean()) {
                    bornMales[maleCount++] = animals++;
                } else {
                    bornFemales[femaleCount++] = animals++;
                }
            }
        }
        newMales.add(Arrays.copyOf(bornMales, Math.max(1, maleCount)));
        newFemales.add(Arrays.copyOf(bornFemales, Math.max(1, femaleCount)));
    }

    private int anyOf(ArrayDeque<int[]> cohorts) {
        int[][] byYear = cohorts.toArray(new int[0][]);
        int[] cohort = byYear[random.nextInt(byYear.length)];
        return cohort[random.nextInt(cohort.length)];
    }

    int animals() {
        return animals;
    }

    PedigreeBuilder told() {
        var builder = Pedigree.builder(animals);
        for (int row = 0; row < animals; row++) {
            tell(builder, row, row);
        }
        return builder;
    }

    /** Tells a birth by the parents of another. */
    void tell(PedigreeBuilder builder, int row, int as) {
        if (sire[as] == Pedigree.UNKNOWN) {
            builder.founder(row);
        } else {
            builder.young(row, sire[as], dam[as]);
        }
    }

    int sireOf(int young) {
        return sire[young];
    }

    int damOf(int young) {
        return dam[young];
    }

    int[] living() {
        return IntStream.range(0, animals)
                .filter(row -> year[row] >= YEARS - YEARS_OF_LIFE)
                .toArray();
    }

    int[] lastYear() {
        return IntStream.range(0, animals).filter(row -> year[row] == YEARS - 1).toArray();
    }

    /** So many of these, drawn without putting back. */
    static int[] some(int[] of, int count, long seed) {
        var random = new SplittableRandom(seed);
        int[] drawn = of.clone();
        for (int i = 0; i < count; i++) {
            int other = i + random.nextInt(drawn.length - i);
            int held = drawn[i];
            drawn[i] = drawn[other];
            drawn[other] = held;
        }
        return Arrays.copyOf(drawn, count);
    }
}
