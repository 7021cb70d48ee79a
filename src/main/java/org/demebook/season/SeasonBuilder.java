package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;

/** Tells what a season's candidates may do. Candidates of each sex are numbered from 0 as they were given. */
public final class SeasonBuilder {
    private final Genes genes;
    private final int females;
    private final int males;
    private final double[] young;
    private final BitSet[] allowed;
    private final int[] littersOfMale;
    private final int[] collection;
    private int[] littersOfCollection = {Season.NO_LIMIT};
    private int[] travellersOfCollection = {Season.NO_LIMIT};
    private int least;
    private int most = Season.NO_LIMIT;
    private final List<Pair> locked = new ArrayList<>();

    SeasonBuilder(Genes genes, int females) {
        this.genes = genes;
        this.females = females;
        males = genes.candidates() - females;
        young = new double[females];
        Arrays.fill(young, 1);
        allowed = IntStream.range(0, females)
                .mapToObj(female -> Season.all(males))
                .toArray(BitSet[]::new);
        littersOfMale = new int[males];
        Arrays.fill(littersOfMale, Season.NO_LIMIT);
        collection = new int[genes.candidates()];
    }

    /**
     * How many young of a litter of hers will count: chance of success × expected survivors × share that stays in the pool.
     *
     * @param expected above 0; a fraction stands for as much of a young
     */
    public SeasonBuilder young(int female, double expected) {
        if (!(expected > 0) || Double.isInfinite(expected)) {
            throw new IllegalArgumentException("of a litter " + expected + " young cannot count: above 0");
        }
        young[female] = expected;
        return this;
    }

    /** Refuses a pair, for whatever reason. */
    public SeasonBuilder refuse(int female, int male) {
        allowed[female].clear(male(male));
        return this;
    }

    /** Takes a refusal back. */
    public SeasonBuilder allow(int female, int male) {
        allowed[female].set(male(male));
        return this;
    }

    /** Refuses every pair whose young would be more inbred, as well as those refused before. */
    public SeasonBuilder inbreedingAtMost(double most) {
        for (int female = 0; female < females; female++) {
            for (int male = 0; male < males; male++) {
                if (genes.kinship()[female][females + male] > most) {
                    allowed[female].clear(male);
                }
            }
        }
        return this;
    }

    public SeasonBuilder littersOfMale(int male, int most) {
        littersOfMale[male(male)] = limit(most);
        return this;
    }

    /** Where everybody lives, and what each collection can bear. */
    public SeasonBuilder collections(int count) {
        littersOfCollection = new int[count];
        travellersOfCollection = new int[count];
        Arrays.fill(littersOfCollection, Season.NO_LIMIT);
        Arrays.fill(travellersOfCollection, Season.NO_LIMIT);
        return this;
    }

    public SeasonBuilder femaleLivesIn(int female, int at) {
        collection[female] = at(at);
        return this;
    }

    public SeasonBuilder maleLivesIn(int male, int at) {
        collection[females + male(male)] = at(at);
        return this;
    }

    public SeasonBuilder littersOfCollection(int at, int most) {
        littersOfCollection[at] = limit(most);
        return this;
    }

    /** How many males of a collection may travel to a litter elsewhere; one that travels twice counts once. */
    public SeasonBuilder travellersOfCollection(int at, int most) {
        travellersOfCollection[at] = limit(most);
        return this;
    }

    /** So many litters, settled ones included. */
    public SeasonBuilder litters(int exactly) {
        least = limit(exactly);
        most = exactly;
        return this;
    }

    /** Not more litters than so many, settled ones included; fewer where more would not help. */
    public SeasonBuilder littersAtMost(int limit) {
        least = 0;
        most = limit(limit);
        return this;
    }

    /** Settles a pair: it stands in every plan. */
    public SeasonBuilder lock(int female, int male) {
        var pair = new Pair(female, male(male));
        if (female < 0 || female >= females || locked.contains(pair)) {
            throw new IllegalArgumentException(pair + " is settled already, or no candidate");
        }
        locked.add(pair);
        return this;
    }

    public Season build() {
        return new Season(
                genes,
                females,
                collection.clone(),
                new Season.Wishes(
                        young.clone(),
                        Arrays.stream(allowed).map(BitSet::clone).toArray(BitSet[]::new),
                        littersOfMale.clone(),
                        littersOfCollection.clone(),
                        travellersOfCollection.clone(),
                        least,
                        most,
                        locked));
    }

    private int male(int male) {
        if (male < 0 || male >= males) {
            throw new IllegalArgumentException("there is no male " + male + " among " + males);
        }
        return male;
    }

    private int at(int at) {
        if (at < 0 || at >= littersOfCollection.length) {
            throw new IllegalArgumentException("there is no collection " + at + " among " + littersOfCollection.length);
        }
        return at;
    }

    private static int limit(int most) {
        if (most < 0) {
            throw new IllegalArgumentException("a limit of " + most + " is below 0");
        }
        return most;
    }
}
