package org.demebook.kinship;

import java.util.Arrays;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/**
 * Takes the births of a pedigree, in any order, under the caller's own row numbers.
 *
 * <p>Every row from 0 is told exactly once: as founder, of unknown parents, young, parthenogen or twin. A row may be
 * named as a parent before it is told. Not safe for use by several threads.
 */
public final class PedigreeBuilder {
    private static final byte UNTOLD = 0;
    /** Beside the kinds of {@link Births}. */
    static final byte TWIN = 6;

    final int animals;
    /** Arrays may be longer than the animals. Whoever extends a pedigree first, shares them. */
    final byte[] kind;
    /** For a twin: the animal it is identical with. */
    final int[] sire;

    final int[] dam;
    /** For a founder its inbreeding coefficient, for a parthenogen the probability that it keeps both genes. */
    final double[] extra;

    final long[] keyHigh;
    final long[] keyLow;

    int males;
    int[][] candidates = new int[4][];
    double[][] shares = new double[4][];

    final int malesBefore;
    final int dnaPairsBefore;
    int dnaPairs;
    int[] dnaA = new int[4];
    int[] dnaB = new int[4];
    double[] dnaKinship = new double[4];

    /** What is known of rows told before, so that it need not be computed again; let go once built. */
    @Nullable
    Pedigree before;

    /** Whether the arrays are those of the pedigree before. */
    final boolean sharesArrays;
    /** How many rows of the arrays are taken; who takes more rows behind the last of its own alone may write there. */
    private final AtomicInteger rowsTaken;

    private boolean built;

    PedigreeBuilder(int animals) {
        this.animals = animals;
        int room = withRoom(animals);
        kind = new byte[room];
        sire = new int[room];
        dam = new int[room];
        extra = new double[room];
        keyHigh = new long[room];
        keyLow = new long[room];
        malesBefore = 0;
        dnaPairsBefore = 0;
        sharesArrays = false;
        rowsTaken = new AtomicInteger(animals);
        setUp(0);
    }

    /** All that was told before, and more rows behind. */
    PedigreeBuilder(PedigreeBuilder told, Pedigree before, int more) {
        animals = told.animals + more;
        this.before = before;
        males = told.males;
        malesBefore = males;
        dnaPairs = told.dnaPairs;
        dnaPairsBefore = dnaPairs;
        sharesArrays = animals <= told.kind.length && told.rowsTaken.compareAndSet(told.animals, animals);
        if (sharesArrays) {
            rowsTaken = told.rowsTaken;
            kind = told.kind;
            sire = told.sire;
            dam = told.dam;
            extra = told.extra;
            keyHigh = told.keyHigh;
            keyLow = told.keyLow;
            candidates = told.candidates;
            shares = told.shares;
            dnaA = told.dnaA;
            dnaB = told.dnaB;
            dnaKinship = told.dnaKinship;
        } else {
            rowsTaken = new AtomicInteger(animals);
            int room = withRoom(animals);
            kind = Arrays.copyOf(told.kind, room);
            sire = Arrays.copyOf(told.sire, room);
            dam = Arrays.copyOf(told.dam, room);
            extra = Arrays.copyOf(told.extra, room);
            keyHigh = Arrays.copyOf(told.keyHigh, room);
            keyLow = Arrays.copyOf(told.keyLow, room);
            candidates = told.candidates.clone();
            shares = told.shares.clone();
            dnaA = told.dnaA.clone();
            dnaB = told.dnaB.clone();
            dnaKinship = told.dnaKinship.clone();
        }
        setUp(told.animals);
    }

    /** For so many, and some more to come. */
    static int withRoom(int animals) {
        return Math.addExact(animals, animals / 32 + 16);
    }

    private void setUp(int from) {
        Arrays.fill(kind, from, animals, UNTOLD);
        Arrays.fill(keyHigh, from, animals, 0);
        for (int row = from; row < animals; row++) {
            keyLow[row] = row;
        }
    }

    /**
     * A name that stays with the animal whatever its row. Sums run in the order of generation, parents and key, so that
     * answers are bit-equal between callers who number the same animals differently. Key all animals or none: without
     * keys the row number is the key.
     */
    public PedigreeBuilder key(int animal, UUID key) {
        requireOpen();
        keyHigh[animal] = key.getMostSignificantBits();
        keyLow[animal] = key.getLeastSignificantBits();
        return this;
    }

    /** An animal whose parents are outside the population by statement: taken from the wild, or accepted as such. */
    public PedigreeBuilder founder(int animal) {
        return founder(animal, 0);
    }

    /** A founder whose inbreeding coefficient, in [0, 1], is known from its DNA. */
    public PedigreeBuilder founder(int animal, double inbreeding) {
        requireProbability(inbreeding);
        return tell(animal, Births.FOUNDER, Pedigree.UNKNOWN, Pedigree.UNKNOWN, inbreeding);
    }

    /**
     * The kinship of two founders, in [0, 1], known from their DNA; 0 for every pair not told. Estimates from few markers
     * may contradict each other: {@link #build} refuses kinships that no animals could have.
     */
    public PedigreeBuilder founderKinship(int founder, int other, double kinship) {
        requireOpen();
        requireProbability(kinship);
        if (founder == other) {
            throw new IllegalArgumentException("give founder " + founder + " its own inbreeding coefficient instead");
        }
        if (before != null && Math.max(founder, other) < before.size()) {
            throw new IllegalStateException("kinship of " + founder + " and " + other
                    + " comes too late: that of their descendants is computed; build the pedigree anew");
        }
        if (dnaPairs == dnaA.length) {
            dnaA = Arrays.copyOf(dnaA, 2 * dnaPairs);
            dnaB = Arrays.copyOf(dnaB, 2 * dnaPairs);
            dnaKinship = Arrays.copyOf(dnaKinship, 2 * dnaPairs);
        }
        dnaA[dnaPairs] = founder;
        dnaB[dnaPairs] = other;
        dnaKinship[dnaPairs++] = kinship;
        return this;
    }

    /** An animal whose parents nobody knows, and which nobody states to be a founder. */
    public PedigreeBuilder unknownParents(int animal) {
        return tell(animal, Births.UNKNOWN_PARENTS, Pedigree.UNKNOWN, Pedigree.UNKNOWN, 0);
    }

    /**
     * A young of two parents.
     *
     * @param sire a row, a male of {@link #unknownSire}, or {@link Pedigree#UNKNOWN}
     * @param dam likewise
     */
    public PedigreeBuilder young(int animal, int sire, int dam) {
        if (sire == Pedigree.UNKNOWN && dam == Pedigree.UNKNOWN) {
            return unknownParents(animal);
        }
        return tell(animal, Births.YOUNG, requireParent(sire), requireParent(dam), 0);
    }

    /**
     * A young whose sire was drawn for it alone, as where the sperm of several males may be mixed in one litter.
     *
     * @param dam a row, or {@link Pedigree#UNKNOWN}
     * @see #unknownSire the parameters, and the case of one sire for all young of a litter
     */
    public PedigreeBuilder youngOfOneOf(int animal, int[] candidates, double[] probabilities, int dam) {
        return young(animal, unknownSire(candidates, probabilities), dam);
    }

    /**
     * One male, not known which: the same for all young that are given him as sire. Their kinship is higher than that of
     * young whose sires were drawn one by one.
     *
     * <p>Source: probabilities enter the kinship recursion linearly, Lacy (2012), J. Heredity 103: 197–205 (abstract);
     * the male as one hidden animal is our own derivation, checked against the average over all assignments.
     *
     * @param candidates rows, or males of earlier calls (the sire of a later litter by stored sperm)
     * @param probabilities one for each candidate, together at most 1; what is left is the chance that he is a male
     *     unrelated to all
     * @return a negative number to be given as sire or candidate to this builder; it is no animal of the pedigree
     */
    public int unknownSire(int[] candidates, double[] probabilities) {
        requireOpen();
        if (candidates.length != probabilities.length || candidates.length == 0) {
            throw new IllegalArgumentException("each candidate needs a probability, and there must be one");
        }
        double sum = 0;
        for (int i = 0; i < candidates.length; i++) {
            requireProbability(probabilities[i]);
            if (candidates[i] == Pedigree.UNKNOWN) {
                throw new IllegalArgumentException("leave out the unknown candidate; the remainder stands for him");
            }
            requireParent(candidates[i]);
            sum += probabilities[i];
        }
        if (sum > 1 + 1e-9) {
            throw new IllegalArgumentException("the probabilities of the candidates add up to " + sum);
        }
        if (males == this.candidates.length) {
            this.candidates = Arrays.copyOf(this.candidates, 2 * males);
            shares = Arrays.copyOf(shares, 2 * males);
        }
        this.candidates[males] = candidates.clone();
        shares[males] = probabilities.clone();
        return male(males++);
    }

    /**
     * A fatherless young.
     *
     * @param secondDivisionShare y in [0, 1]; 0 where nothing is known, and then terminal fusion gives F = 1
     */
    public PedigreeBuilder parthenogen(int animal, int dam, Fusion fusion, double secondDivisionShare) {
        requireRow(dam);
        return tell(animal, Births.PARTHENOGEN, dam, dam, fusion.keepsBoth(secondDivisionShare));
    }

    /** An animal with the same genome as another, whose birth is told once. The other may itself be a twin. */
    public PedigreeBuilder twin(int animal, int of) {
        requireRow(of);
        return tell(animal, TWIN, of, Pedigree.UNKNOWN, 0);
    }

    /**
     * The pedigree of all births told, once. O(n log n) for the order; with inbreeding about 2 s for a million animals of
     * 1 700 ancestors each.
     *
     * @throws PedigreeLoop if an animal would be its own ancestor
     * @throws IllegalStateException if a row was not told, the kinships of founders contradict each other, or the pedigree
     *     was built already
     */
    public Pedigree build() {
        requireOpen();
        for (int row = before == null ? 0 : before.size(); row < animals; row++) {
            if (kind[row] == UNTOLD) {
                throw new IllegalStateException("row " + row + " was not told");
            }
        }
        for (int pair = dnaPairsBefore; pair < dnaPairs; pair++) {
            requireFounder(dnaA[pair]);
            requireFounder(dnaB[pair]);
        }
        if (dnaPairs > dnaPairsBefore) {
            FounderKinshipCheck.require(this);
        }
        var pedigree = before != null && LateBirths.areAll(before.births(), this)
                ? before.with(this)
                : new Pedigree(new BirthOrder(this).births(), this);
        built = true;
        before = null;
        return pedigree;
    }

    /** Which of two animals comes first where births alone do not say; refuses to leave it to chance. */
    int compareKeys(int row, int other) {
        int high = Long.compare(keyHigh[row], keyHigh[other]);
        int key = high != 0 ? high : Long.compare(keyLow[row], keyLow[other]);
        if (key == 0 && row != other) {
            throw new IllegalStateException("rows " + row + " and " + other + " have the same key");
        }
        return key;
    }

    /** The number by which the caller knows a hidden male. */
    static int male(int index) {
        return -2 - index;
    }

    private void requireOpen() {
        if (built) {
            throw new IllegalStateException("this pedigree was built; extend it to tell more");
        }
    }

    private PedigreeBuilder tell(int animal, byte what, int sireOf, int damOf, double more) {
        requireOpen();
        if (kind[animal] != UNTOLD) {
            throw new IllegalStateException("row " + animal + " was told twice");
        }
        kind[animal] = what;
        sire[animal] = sireOf;
        dam[animal] = damOf;
        extra[animal] = more;
        return this;
    }

    private int requireParent(int parent) {
        if (parent >= animals || parent < male(males - 1)) {
            throw new IllegalArgumentException("no animal has row " + parent + "; there are " + animals);
        }
        return parent;
    }

    private void requireRow(int row) {
        if (row < 0 || row >= animals) {
            throw new IllegalArgumentException("no animal has row " + row + "; there are " + animals);
        }
    }

    private void requireFounder(int row) {
        requireRow(row);
        if (kind[row] != Births.FOUNDER && kind[row] != Births.UNKNOWN_PARENTS) {
            throw new IllegalStateException("row " + row + " has parents, so its kinship follows from them");
        }
    }

    private static void requireProbability(double value) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException("a probability lies in 0 to 1, was " + value);
        }
    }
}
