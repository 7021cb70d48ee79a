package org.demebook.kinship;

import java.util.Arrays;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jspecify.annotations.Nullable;

/**
 * A pedigree that answers questions about itself. Animals are the rows under which they were told to the builder.
 *
 * <p>Immutable and safe for use by several threads. Answers are given under one {@link Convention} about unknown
 * ancestors, at first {@link Convention#UNRELATED}; see {@link #under}. Equal births and keys give bit-equal answers,
 * whatever the numbering and the order in which they were told, and on any number of threads; large work is shared among
 * those of the common pool.
 *
 * <p>Kinship of two animals is the probability that two genes at the same locus, one drawn at random from each, are
 * identical by descent: in [0, 1], ½ for a non-inbred animal with itself. The inbreeding coefficient F of an animal is
 * the same for the two genes it has, so it equals the kinship of its parents.
 */
public final class Pedigree {
    /** Stands for a parent that nobody knows. */
    public static final int UNKNOWN = -1;

    private final Births births;
    /** What was told, to be extended; absent where the pedigree is a part of another. */
    private final @Nullable PedigreeBuilder told;

    private final Convention convention;
    private final Relationship identical;
    private final @Nullable Relationship bothKnown;
    /** By node. */
    private final double[] known;

    /** This one, or the one that it answers otherwise. */
    private final Pedigree unrelated;
    /** By convention, once asked for; those of the first are used. */
    private final AtomicReferenceArray<Pedigree> otherwise = new AtomicReferenceArray<>(Convention.values().length);

    Pedigree(Births births, @Nullable PedigreeBuilder told) {
        this(
                births,
                told,
                Relationship.ofAll(births, told == null || told.before == null ? null : told.before.identical),
                Arrays.copyOf(births.knownFractions(), births.kind().length));
    }

    private Pedigree(Births births, @Nullable PedigreeBuilder told, Relationship identical, double[] known) {
        this.births = births;
        this.told = told;
        this.identical = identical;
        this.known = known;
        convention = Convention.UNRELATED;
        bothKnown = null;
        unrelated = this;
    }

    /** The same births under another convention. */
    private Pedigree(Pedigree unrelated, Pedigree inOrder, Convention convention) {
        this.unrelated = unrelated;
        this.convention = convention;
        births = inOrder.births;
        told = inOrder.told;
        known = inOrder.known;
        boolean knownOnly = convention == Convention.KNOWN_ONLY;
        identical = knownOnly ? Relationship.ofKnown(births) : Relationship.ofAll(UnknownSiblings.of(births), null);
        bothKnown = knownOnly ? Relationship.ofKnown(births.ofOneCommonFounder()) : null;
    }

    /** @param animals how many rows will be told, numbered from 0 */
    public static PedigreeBuilder builder(int animals) {
        return new PedigreeBuilder(animals);
    }

    /**
     * A builder that knows all births of this pedigree, with more rows behind to be told; numbers of unknown sires stay
     * good. What is built then is what building from nothing would give, to the last bit, in a small part of the time:
     * inbreeding is computed for the new rows only, and up to a thousand births by known parents or none cost a kinship
     * each. It answers under {@link Convention#UNRELATED}.
     */
    public PedigreeBuilder extended(int more) {
        var all = under(Convention.UNRELATED);
        return new PedigreeBuilder(Objects.requireNonNull(all.told), all, more);
    }

    /** This pedigree and the late births that the builder was told since. */
    Pedigree with(PedigreeBuilder builder) {
        int late = births.late().count() + builder.animals - births.rows();
        if (late > LateBirths.MOST && births.late().count() > 0) {
            return inOrder().with(builder);
        }
        if (late > LateBirths.MOST) {
            return new Pedigree(new BirthOrder(builder).births(), builder);
        }
        var grown = LateBirths.added(births, builder);
        double[] itsKnown = grown.kind() == births.kind() ? known : Arrays.copyOf(known, grown.kind().length);
        grown.findKnown(births.nodes() + 1, itsKnown);
        return new Pedigree(grown, builder, identical.with(grown), itsKnown);
    }

    private Pedigree inOrder() {
        if (births.late().count() == 0) {
            return this;
        }
        int[] order = births.order();
        var ordered = births.inOrder(order);
        double[] itsKnown = new double[ordered.kind().length];
        for (int i = 0; i < order.length; i++) {
            itsKnown[i + 1] = known[order[i]];
        }
        return new Pedigree(ordered, told, identical.inOrder(ordered, order), itsKnown);
    }

    Births births() {
        return births;
    }

    /** One row of every animal, of twins one of them, in the order of nodes. */
    int[] animalsInOrder() {
        return Arrays.stream(births.order())
                .map(node -> births.rowOfNode()[node])
                .filter(row -> row >= 0)
                .toArray();
    }

    /**
     * This pedigree, answering under the convention. The first change to each costs once or twice what the building did, in
     * time and in memory.
     */
    public Pedigree under(Convention wanted) {
        if (wanted == convention) {
            return this;
        }
        if (wanted == Convention.UNRELATED || unrelated != this) {
            return unrelated.under(wanted);
        }
        var other = otherwise.get(wanted.ordinal());
        if (other == null) {
            other = new Pedigree(this, inOrder(), wanted);
            otherwise.set(wanted.ordinal(), other);
        }
        return other;
    }

    public Convention convention() {
        return convention;
    }

    public int size() {
        return births.rows();
    }

    /**
     * The expected share, in [0, 1], of the animal's genome that traces to stated founders; the rest was lost at a parent
     * that nobody knows. The same under every convention.
     */
    public double knownFraction(int animal) {
        return known[births.nodeOfRow()[animal]];
    }

    /** By row, {@link #knownFraction}. */
    public double[] knownFractions() {
        return births.toRows(known);
    }

    /** The inbreeding coefficient F, in [0, 1]. O(1). */
    public double inbreeding(int animal) {
        double beyond = identical.self(animal) - identical.known(animal);
        return bothKnown == null ? beyond : beyond / (bothKnown.self(animal) - bothKnown.known(animal));
    }

    /** By row, {@link #inbreeding(int)}. */
    public double[] inbreeding() {
        double[] all = new double[size()];
        for (int animal = 0; animal < all.length; animal++) {
            all[animal] = inbreeding(animal);
        }
        return all;
    }

    /** F of one more young of the two, which is their kinship. Cost: as {@link #kinship(int, int)}. */
    public double inbreedingOfYoung(int sire, int dam) {
        return kinship(sire, dam);
    }

    /** Symmetric. Visits the ancestors of the two: below a millisecond for thousands of them. */
    public double kinship(int animal, int other) {
        double relationship = identical.between(animal, other);
        return bothKnown == null ? relationship / 2 : relationship / bothKnown.between(animal, other);
    }

    /**
     * Kinship of each row animal with each column animal, as {@code [row][column]}. O(their ancestors × columns): all
     * pairs of 5 000 animals, or 500 × 500 among a million, take about a fifth of a second.
     */
    public double[][] kinship(int[] rows, int[] columns) {
        double[][] kinship = identical.kinship(rows, columns);
        if (bothKnown != null) {
            divide(kinship, bothKnown.kinship(rows, columns));
        }
        return kinship;
    }

    private static void divide(double[][] dividends, double[][] divisors) {
        for (int r = 0; r < dividends.length; r++) {
            for (int c = 0; c < dividends[r].length; c++) {
                dividends[r][c] /= divisors[r][c];
            }
        }
    }

    /** Whether any birth has a sire that is one of several. */
    public boolean hasUncertainSires() {
        return births.males().node().length > 0;
    }

    /**
     * Best and worst case of a kinship that depends on who the sires were.
     *
     * <p>Of an animal with itself it is (1 + F)/2.
     *
     * @param limit how many ways to name them are tried at most: all if there are no more, else as many drawn by their
     *     probabilities
     * @param seed of the draws
     */
    public KinshipRange kinshipRange(int animal, int other, int limit, long seed) {
        return KinshipRange.of(births, convention, animal, other, limit, seed);
    }

    /**
     * A·v by row, A being the additive relationship matrix: twice the kinship of each pair. O(n), without the matrix.
     *
     * <p>Under {@link Convention#KNOWN_ONLY} identity among known genes is counted, not rescaled.
     */
    public double[] relationshipTimes(double[] v) {
        if (v.length != size()) {
            throw new IllegalArgumentException("the vector has " + v.length + " places for " + size() + " animals");
        }
        return identical.times(v);
    }

    /** These animals as one pool of genes. */
    public GenePool pool(int... animals) {
        return new GenePool(this, animals, identical, bothKnown);
    }

    /** How much of its ancestry each animal has on record. */
    public PedigreeDepth depth() {
        return new PedigreeDepth(births);
    }

    /** Where the genes of one animal come from. */
    public FounderContributions founderContributions(int animal) {
        double[] genes = births.vector();
        genes[births.nodeOfRow()[animal]] = 1;
        return FounderContributions.of(births, genes, convention);
    }
}
