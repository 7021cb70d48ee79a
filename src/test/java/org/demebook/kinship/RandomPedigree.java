package org.demebook.kinship;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import org.demebook.Thorough;

/**
 * A pedigree made up from a seed, which can be told in any numbering and order, and whose kinship can be had from the
 * definition: by a table, founders first, with every unknown sire named.
 */
final class RandomPedigree {
    private enum Kind {
        FOUNDER,
        UNKNOWN_PARENTS,
        YOUNG,
        OF_UNKNOWN_SIRE,
        FATHERLESS,
        TWIN
    }

    /** How many are tried; mutation testing tries fewer, since each mutant that lives costs them all. */
    static final int MOST = Thorough.size("demebook.pedigrees", 10_000, 100_000);

    /** Rows beyond the animals, for births to be added. */
    static final int MORE = 3;

    final int animals;
    private final Kind[] kind;
    private final int[] sire;
    private final int[] dam;
    private final UUID[] keys;
    /** Candidates and chances by unknown male; −1 as a candidate is a stranger. */
    private final int[][] candidates;

    private final double[][] chances;
    private int males;

    /** @param unknownSires how many litters have one; beside them fatherless young and twins appear. 0: none of these. */
    RandomPedigree(long seed, int animals, int unknownSires) {
        this.animals = animals;
        kind = new Kind[animals];
        sire = new int[animals];
        dam = new int[animals];
        keys = new UUID[animals];
        candidates = new int[unknownSires][];
        chances = new double[unknownSires][];
        var random = new SplittableRandom(seed);
        for (int i = 0; i < animals; i++) {
            keys[i] = new UUID(random.nextLong(), random.nextLong());
            bear(i, random, unknownSires > 0);
        }
    }

    private void bear(int i, SplittableRandom random, boolean everyKind) {
        int draw = random.nextInt(100);
        kind[i] = i < 4 || draw < 4
                ? Kind.FOUNDER
                : draw < 7
                        ? Kind.UNKNOWN_PARENTS
                        : !everyKind || draw < 70
                                ? Kind.YOUNG
                                : draw < 76 ? Kind.FATHERLESS : draw < 80 ? Kind.TWIN : Kind.OF_UNKNOWN_SIRE;
        sire[i] = random.nextInt(8) == 0 ? -1 : random.nextInt(Math.max(1, i));
        dam[i] = sire[i] >= 0 && random.nextInt(8) == 0 ? -1 : random.nextInt(Math.max(1, i));
        if (kind[i] == Kind.TWIN || kind[i] == Kind.FATHERLESS) {
            dam[i] = random.nextInt(i);
        }
        if (kind[i] == Kind.OF_UNKNOWN_SIRE) {
            if (males > 0 && (males == candidates.length || random.nextBoolean())) {
                sire[i] = random.nextInt(males); // a young more of a litter told before
            } else {
                sire[i] = males;
                candidates[males] = new int[] {random.nextInt(i), random.nextInt(i), -1};
                chances[males++] = new double[] {.5, .3, .2};
            }
        }
    }

    /** From 1, so many for a test that is run for each; fewer where few pedigrees are tried in all. */
    static LongStream seeds(int many) {
        return LongStream.rangeClosed(1, many == MOST ? MOST : Math.min(many, MOST / 20));
    }

    /** −1 for none. */
    int sire(int animal) {
        return kind[animal] == Kind.YOUNG ? sire[animal] : -1;
    }

    int dam(int animal) {
        return kind[animal] == Kind.YOUNG ? dam[animal] : -1;
    }

    int[] rowsAsMade() {
        int[] rows = new int[animals];
        Arrays.setAll(rows, i -> i);
        return rows;
    }

    /** Numbers of unknown males as a builder gave them; none yet. */
    int[] noMales() {
        return new int[males];
    }

    /** @param rowOf the row of each animal; they are told in the order of rows */
    Pedigree told(int[] rowOf) {
        return told(rowOf, builder -> {});
    }

    /** @param more tells up to {@link #MORE} rows beyond, and those it leaves become founders */
    Pedigree told(int[] rowOf, Consumer<PedigreeBuilder> more) {
        var builder = Pedigree.builder(animals + MORE);
        tell(builder, rowOf, 0, animals, noMales());
        more.accept(builder);
        tellMore(builder);
        return builder.build();
    }

    /** The same animals, with every unknown parent and every stranger a row of its own behind them, young of one pair. */
    Pedigree toldWithUnknownFullSibs() {
        int[] rows = rowsAsMade();
        int sire = animals;
        int dam = animals + 1;
        int next = animals + 2;
        int most = next + animals + males;
        var builder = Pedigree.builder(most).founder(sire).founder(dam);
        int[] handles = noMales();
        for (int i = 0; i < animals; i++) {
            int missing = next;
            boolean lacksSire = kind[i] == Kind.YOUNG && this.sire[i] < 0;
            boolean lacksDam = (kind[i] == Kind.YOUNG || kind[i] == Kind.OF_UNKNOWN_SIRE) && this.dam[i] < 0;
            if (lacksSire || lacksDam) {
                builder.young(next++, sire, dam);
            }
            int itsDam = lacksDam ? missing : this.dam[i];
            if (kind[i] == Kind.UNKNOWN_PARENTS) {
                builder.young(i, sire, dam);
            } else if (kind[i] == Kind.YOUNG) {
                builder.young(i, lacksSire ? missing : this.sire[i], itsDam);
            } else if (kind[i] == Kind.OF_UNKNOWN_SIRE) {
                int male = this.sire[i];
                if (handles[male] == 0) {
                    builder.young(next, sire, dam);
                    handles[male] = builder.unknownSire(
                            new int[] {candidates[male][0], candidates[male][1], next++}, chances[male]);
                }
                builder.young(i, handles[male], itsDam);
            } else {
                tell(builder, i, rows, handles);
                builder.key(i, new UUID(0, i));
            }
        }
        while (next < most) {
            builder.founder(next++);
        }
        return builder.build();
    }

    void tell(PedigreeBuilder builder, int[] rowOf, int from, int to, int[] handles) {
        int[] animalOf = new int[animals];
        for (int i = 0; i < animals; i++) {
            animalOf[rowOf[i]] = i;
        }
        for (int row = from; row < to; row++) {
            tell(builder, animalOf[row], rowOf, handles);
        }
    }

    void tellMore(PedigreeBuilder builder) {
        for (int row = animals; row < animals + MORE; row++) {
            builder.key(row, new UUID(row, 0));
            if (builder.kind[row] == 0) {
                builder.founder(row);
            }
        }
    }

    private void tell(PedigreeBuilder builder, int i, int[] rowOf, int[] handles) {
        builder.key(rowOf[i], keys[i]);
        switch (kind[i]) {
            case FOUNDER -> builder.founder(rowOf[i]);
            case UNKNOWN_PARENTS -> builder.unknownParents(rowOf[i]);
            case YOUNG -> builder.young(rowOf[i], row(sire[i], rowOf), row(dam[i], rowOf));
            case FATHERLESS -> builder.parthenogen(rowOf[i], rowOf[dam[i]], Fusion.TERMINAL, .25);
            case TWIN -> builder.twin(rowOf[i], rowOf[dam[i]]);
            case OF_UNKNOWN_SIRE -> {
                int male = sire[i];
                if (handles[male] == 0) {
                    int[] named = {rowOf[candidates[male][0]], rowOf[candidates[male][1]]};
                    handles[male] = builder.unknownSire(named, new double[] {chances[male][0], chances[male][1]});
                }
                builder.young(rowOf[i], handles[male], row(dam[i], rowOf));
            }
        }
    }

    private static int row(int animal, int[] rowOf) {
        return animal < 0 ? Pedigree.UNKNOWN : rowOf[animal];
    }

    /** The mean over all ways to name the unknown sires, each by its probability. */
    double[][] kinshipByDefinition() {
        double[][] mean = new double[animals][animals];
        int[] choice = new int[males];
        for (int way = 0; way < Math.pow(3, males); way++) {
            double chance = 1;
            for (int male = 0, rest = way; male < males; male++, rest /= 3) {
                choice[male] = rest % 3;
                chance *= chances[male][choice[male]];
            }
            double[][] one = kinshipByTable(choice);
            for (int i = 0; i < animals; i++) {
                for (int j = 0; j < animals; j++) {
                    mean[i][j] += chance * one[i][j];
                }
            }
        }
        return mean;
    }

    /** Emik &amp; Terrill (1949): the kinship with an older animal is the mean of the parents' kinships with it. */
    private double[][] kinshipByTable(int[] choice) {
        double[][] f = new double[animals + males][animals + males];
        for (int i = 0; i < animals; i++) {
            int father = kind[i] == Kind.OF_UNKNOWN_SIRE ? chosen(sire[i], choice) : sire[i];
            fill(f, i, father);
        }
        return f;
    }

    /** A stranger has a row of his own behind the animals, since all young of a litter have the same. */
    private int chosen(int male, int[] choice) {
        int candidate = candidates[male][choice[male]];
        return candidate < 0 ? animals + male : candidate;
    }

    private void fill(double[][] f, int i, int father) {
        for (int stranger = animals; stranger < f.length; stranger++) {
            f[stranger][stranger] = .5;
        }
        for (int j = 0; j < f.length; j++) {
            if (j < i || j >= animals) {
                f[i][j] = switch (kind[i]) {
                    case FOUNDER, UNKNOWN_PARENTS -> 0;
                    case YOUNG, OF_UNKNOWN_SIRE -> (of(f, father, j) + of(f, dam[i], j)) / 2;
                    case FATHERLESS, TWIN -> f[dam[i]][j];
                };
                f[j][i] = f[i][j];
            }
        }
        f[i][i] = switch (kind[i]) {
            case FOUNDER, UNKNOWN_PARENTS -> .5;
            case YOUNG, OF_UNKNOWN_SIRE -> (1 + (dam[i] < 0 ? 0 : of(f, father, dam[i]))) / 2;
            case FATHERLESS -> .25 * f[dam[i]][dam[i]] + .75;
            case TWIN -> f[dam[i]][dam[i]];
        };
    }

    private static double of(double[][] f, int parent, int other) {
        return parent < 0 ? 0 : f[parent][other];
    }
}
