package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Set;
import org.demebook.kinship.Convention;
import org.demebook.kinship.GenePool;
import org.demebook.kinship.Pedigree;

/**
 * What is to be planned: candidates, how many of their young will count, and what keepers can bear. Immutable.
 *
 * <p>A female has at most one litter. Young stay in their dam's collection; where dam and sire live apart, he travels.
 */
public final class Season {
    /** Of a limit: there is none. */
    public static final int NO_LIMIT = Integer.MAX_VALUE;

    static final int NONE = -1;

    final Genes genes;
    final int females;
    final int males;
    /** By female. */
    final double[] young;
    /** By female, the males she may have. */
    final BitSet[] allowed;
    /** By male. */
    final int[] littersOfMale;
    /** By candidate, females first. */
    final int[] collection;
    /** By collection. */
    final int[] littersOfCollection;
    /** By collection. */
    final int[] travellersOfCollection;

    final int least;
    final int most;
    final List<Pair> locked;

    /**
     * What of a season may be other than in a builder's first state.
     *
     * @param least litters, 0 where there is no minimum
     * @param most litters, {@link #NO_LIMIT} where there is no maximum
     */
    record Wishes(
            double[] young,
            BitSet[] allowed,
            int[] littersOfMale,
            int[] littersOfCollection,
            int[] travellersOfCollection,
            int least,
            int most,
            List<Pair> locked) {}

    Season(Genes genes, int females, int[] collection, Wishes wishes) {
        this.genes = genes;
        this.females = females;
        males = genes.candidates() - females;
        this.collection = collection;
        young = wishes.young;
        allowed = wishes.allowed;
        littersOfMale = wishes.littersOfMale;
        littersOfCollection = wishes.littersOfCollection;
        travellersOfCollection = wishes.travellersOfCollection;
        least = wishes.least;
        most = wishes.most;
        locked = List.copyOf(wishes.locked);
    }

    /**
     * Begins a season of a pool. Every pair is allowed, each male may have any number of litters, all live in collection 0,
     * one young of each litter counts, any number of litters may be had, until the builder is told otherwise.
     *
     * <p>Cost: the kinships of all candidates with each other.
     *
     * @param pedigree under {@link Convention#UNRELATED} or {@link Convention#UNKNOWN_FULL_SIBS}; the pool's
     * @param females rows of the pedigree, in the pool or not
     * @param males rows of the pedigree, in the pool or not
     * @throws IllegalArgumentException if an animal stands twice, or the pool leaves unknown genes out of account, or is
     *     under another convention than the pedigree
     */
    public static SeasonBuilder of(Pedigree pedigree, GenePool pool, int[] females, int[] males) {
        if (pool.convention() != pedigree.convention()) {
            throw new IllegalArgumentException(
                    "the pool is under " + pool.convention() + ", its pedigree under " + pedigree.convention());
        }
        int[] candidates = candidates(pedigree, females, males);
        double[] toPool =
                Arrays.stream(candidates).mapToDouble(pool::meanKinship).toArray();
        return new SeasonBuilder(
                new Genes(pool.size(), pool.meanKinship(), pedigree.kinship(candidates, candidates), toPool),
                females.length);
    }

    /**
     * The same of a pool in which not every animal counts as one: with weights w by animal, N = Σw, mean kinship
     * = wᵀKw/N², that of a candidate with the pool Kw/N. So those who leave, or will not breed again, count for less, and a
     * litter of theirs and of their kin is worth the more: it is their last chance.
     *
     * @param pool rows of the pedigree
     * @param weights by place in the pool, 0 or more and not all 0: as a rule the share of the coming seasons through which
     *     the animal is expected to stay and breed; 0 for one that leaves now. A young that counts weighs 1
     */
    public static SeasonBuilder of(Pedigree pedigree, int[] pool, double[] weights, int[] females, int[] males) {
        int[] candidates = candidates(pedigree, females, males);
        double size = Arrays.stream(weights).sum();
        if (weights.length != pool.length
                || Arrays.stream(pool).distinct().count() < pool.length
                || !Arrays.stream(weights).allMatch(weight -> weight >= 0)
                || !(size > 0 && size < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "each animal of a pool stands once, with a weight of 0 or more, not all 0: " + pool.length
                            + " animals, weights " + Arrays.toString(weights));
        }
        double[] weightOf = new double[pedigree.size()];
        for (int place = 0; place < pool.length; place++) {
            weightOf[pool[place]] = weights[place];
        }
        double[] relationship = pedigree.relationshipTimes(weightOf);
        double sum = 0;
        for (int animal : pool) {
            sum += weightOf[animal] * relationship[animal] / 2;
        }
        double[] toPool = Arrays.stream(candidates)
                .mapToDouble(candidate -> relationship[candidate] / (2 * size))
                .toArray();
        return new SeasonBuilder(
                new Genes(size, sum / (size * size), pedigree.kinship(candidates, candidates), toPool), females.length);
    }

    private static int[] candidates(Pedigree pedigree, int[] females, int[] males) {
        if (pedigree.convention() == Convention.KNOWN_ONLY) {
            throw new IllegalArgumentException(
                    "a season needs a convention under which every gene counts, not " + pedigree.convention());
        }
        int[] candidates = Arrays.copyOf(females, females.length + males.length);
        System.arraycopy(males, 0, candidates, females.length, males.length);
        if (Arrays.stream(candidates).distinct().count() < candidates.length) {
            throw new IllegalArgumentException("a candidate stands twice");
        }
        return candidates;
    }

    /**
     * The season that was written down.
     *
     * @throws IllegalArgumentException if the form's sizes do not go together, or a number is out of its range
     */
    public static Season of(SeasonForm form) {
        return form.season();
    }

    /** The season in numbers, to be written down. */
    public SeasonForm form() {
        return SeasonForm.of(this);
    }

    public int females() {
        return females;
    }

    public int males() {
        return males;
    }

    /** Of a litter of this female, the young that will count. */
    public double young(int female) {
        return young[female];
    }

    /** The inbreeding coefficient of their young, in [0, 1]. */
    public double inbreeding(Pair pair) {
        return genes.kinship()[pair.female()][females + pair.male()];
    }

    /** Both are candidates. */
    boolean has(Pair pair) {
        return pair.female() >= 0 && pair.female() < females && pair.male() >= 0 && pair.male() < males;
    }

    public boolean isAllowed(Pair pair) {
        return allowed[pair.female()].get(pair.male());
    }

    public boolean isLocked(Pair pair) {
        return locked.contains(pair);
    }

    /** He would have to travel to her. */
    public boolean isAcross(Pair pair) {
        return isAcross(pair.female(), pair.male());
    }

    boolean isAcross(int female, int male) {
        return collection[female] != collection[females + male];
    }

    /** Allowed, and nobody travels from where nobody may. */
    boolean isOpen(int female, int male) {
        return allowed[female].get(male)
                && !(isAcross(female, male) && travellersOfCollection[collection[females + male]] == 0);
    }

    boolean hasTravelLimits() {
        return Arrays.stream(travellersOfCollection).anyMatch(limit -> limit > 0 && limit < males);
    }

    /** Everything that could be given up, those first that are rather left out of a contradiction. */
    List<Constraint> constraints() {
        var all = new ArrayList<Constraint>();
        for (int female = 0; female < females; female++) {
            if (allowed[female].cardinality() < males) {
                all.add(new Constraint.PairsOfFemale(female));
            }
        }
        for (int male = 0; male < males; male++) {
            if (littersOfMale[male] < females) {
                all.add(new Constraint.LittersOfMale(male, littersOfMale[male]));
            }
        }
        for (int at = 0; at < littersOfCollection.length; at++) {
            if (travellersOfCollection[at] < males) {
                all.add(new Constraint.TravellersOfCollection(at, travellersOfCollection[at]));
            }
            if (littersOfCollection[at] < females) {
                all.add(new Constraint.LittersOfCollection(at, littersOfCollection[at]));
            }
        }
        locked.forEach(pair -> all.add(new Constraint.PairLocked(pair)));
        if (most < females) {
            all.add(new Constraint.LittersAtMost(most));
        }
        if (least > 0) {
            all.add(new Constraint.LittersWanted(least));
        }
        return all;
    }

    /** The season with some constraints given up. */
    Season without(Set<Constraint> given) {
        BitSet[] pairs = allowed.clone();
        int[] ofMale = littersOfMale.clone();
        int[] ofCollection = littersOfCollection.clone();
        int[] travellers = travellersOfCollection.clone();
        var settled = new ArrayList<>(locked);
        int fewest = least;
        int highest = most;
        for (var constraint : given) {
            if (constraint instanceof Constraint.PairsOfFemale pairsOf) {
                pairs[pairsOf.female()] = all(males);
            } else if (constraint instanceof Constraint.LittersOfMale of) {
                ofMale[of.male()] = NO_LIMIT;
            } else if (constraint instanceof Constraint.LittersOfCollection of) {
                ofCollection[of.collection()] = NO_LIMIT;
            } else if (constraint instanceof Constraint.TravellersOfCollection of) {
                travellers[of.collection()] = NO_LIMIT;
            } else if (constraint instanceof Constraint.PairLocked lock) {
                settled.remove(lock.pair());
            } else if (constraint instanceof Constraint.LittersWanted) {
                fewest = 0;
            } else if (constraint instanceof Constraint.LittersAtMost) {
                highest = NO_LIMIT;
            }
        }
        return with(new Wishes(young, pairs, ofMale, ofCollection, travellers, fewest, highest, settled));
    }

    /** The season in which some pairs are refused; a settled one among them is no longer settled. */
    Season refused(List<Pair> refused) {
        BitSet[] pairs = allowed.clone();
        for (var pair : refused) {
            pairs[pair.female()] = (BitSet) pairs[pair.female()].clone();
            pairs[pair.female()].clear(pair.male());
        }
        var settled = locked.stream().filter(pair -> !refused.contains(pair)).toList();
        return with(new Wishes(
                young, pairs, littersOfMale, littersOfCollection, travellersOfCollection, least, most, settled));
    }

    /** The season in which so many young of one female's litter count. */
    Season withYoung(int female, double expected) {
        double[] counting = young.clone();
        counting[female] = expected;
        return withYoung(counting);
    }

    /** The season in which so many young count, by female. */
    Season withYoung(double[] counting) {
        return with(new Wishes(
                counting, allowed, littersOfMale, littersOfCollection, travellersOfCollection, least, most, locked));
    }

    /** The season with a limit on litters beside its own. */
    Season withLittersAtMost(int limit) {
        return with(new Wishes(
                young,
                allowed,
                littersOfMale,
                littersOfCollection,
                travellersOfCollection,
                least,
                Math.min(most, limit),
                locked));
    }

    /** A stricter season, in which only these males travel; if they are few enough, travellers need no limit there. */
    Season inWhichTravel(BitSet these) {
        BitSet[] pairs = new BitSet[females];
        for (int female = 0; female < females; female++) {
            int she = female;
            pairs[female] = new BitSet();
            allowed[female].stream()
                    .filter(male -> these.get(male) || !isAcross(she, male))
                    .forEach(pairs[female]::set);
        }
        int[] travellers = new int[travellersOfCollection.length];
        Arrays.fill(travellers, NO_LIMIT);
        return with(new Wishes(young, pairs, littersOfMale, littersOfCollection, travellers, least, most, locked));
    }

    /** A part of the season: some females only, each male as often as told, just so many litters. */
    Season ofThese(BitSet these, int[] ofMale, int litters) {
        BitSet[] pairs = allowed.clone();
        for (int female = 0; female < females; female++) {
            if (!these.get(female)) {
                pairs[female] = new BitSet();
            }
        }
        var settled = locked.stream().filter(pair -> these.get(pair.female())).toList();
        return with(new Wishes(
                young, pairs, ofMale, littersOfCollection, travellersOfCollection, litters, litters, settled));
    }

    private Season with(Wishes wishes) {
        return new Season(genes, females, collection, wishes);
    }

    static BitSet all(int count) {
        var all = new BitSet(count);
        all.set(0, count);
        return all;
    }
}
