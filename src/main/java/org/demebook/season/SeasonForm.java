package org.demebook.season;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;

/**
 * All that a season is, in numbers that can be written down and read again: the season made of them has the same plan to the
 * last bit, if every double is kept exactly. Its arrays are its own; whoever changes them changes the form, not the season.
 *
 * @param poolSize N, animals in the pool now; above 0
 * @param poolMeanKinship of the pool now, each with itself included; in [0, 1]
 * @param kinship of the candidates, females first, then males: by row up to and with itself; in [0, 1]
 * @param toPool by candidate, mean kinship with the pool; in [0, 1]
 * @param young by female, how many of a litter of hers count; above 0
 * @param allowed by female, the males she may have, ascending
 * @param littersOfMale by male, at most; {@link Season#NO_LIMIT} where there is none, as in all limits
 * @param collection by candidate, where it lives
 * @param littersOfCollection by collection, at most
 * @param travellersOfCollection by collection, males that travel to a litter elsewhere, at most
 * @param least litters, 0 where there is no minimum
 * @param most litters
 * @param locked settled pairs
 */
public record SeasonForm(
        double poolSize,
        double poolMeanKinship,
        double[][] kinship,
        double[] toPool,
        double[] young,
        int[][] allowed,
        int[] littersOfMale,
        int[] collection,
        int[] littersOfCollection,
        int[] travellersOfCollection,
        int least,
        int most,
        List<Pair> locked) {

    static SeasonForm of(Season season) {
        return new SeasonForm(
                season.genes.size(),
                season.genes.meanKinship(),
                IntStream.range(0, season.genes.candidates())
                        .mapToObj(row -> Arrays.copyOf(season.genes.kinship()[row], row + 1))
                        .toArray(double[][]::new),
                season.genes.toPool().clone(),
                season.young.clone(),
                Arrays.stream(season.allowed)
                        .map(males -> males.stream().toArray())
                        .toArray(int[][]::new),
                season.littersOfMale.clone(),
                season.collection.clone(),
                season.littersOfCollection.clone(),
                season.travellersOfCollection.clone(),
                season.least,
                season.most,
                season.locked);
    }

    /** @throws IllegalArgumentException if sizes do not go together, or a number is out of its range */
    Season season() {
        new FormCheck(this).check();
        double[][] whole = Arrays.stream(kinship)
                .map(row -> Arrays.copyOf(row, kinship.length))
                .toArray(double[][]::new);
        return new Season(
                new Genes(poolSize, poolMeanKinship, whole, toPool.clone()),
                young.length,
                collection.clone(),
                new Season.Wishes(
                        young.clone(),
                        Arrays.stream(allowed).map(SeasonForm::set).toArray(BitSet[]::new),
                        littersOfMale.clone(),
                        littersOfCollection.clone(),
                        travellersOfCollection.clone(),
                        least,
                        most,
                        locked));
    }

    private static BitSet set(int[] members) {
        var set = new BitSet();
        Arrays.stream(members).forEach(set::set);
        return set;
    }
}
