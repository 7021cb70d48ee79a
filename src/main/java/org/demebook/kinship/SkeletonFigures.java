package org.demebook.kinship;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.UUID;
import java.util.stream.IntStream;

/**
 * What follows from the births of a {@link Skeleton}.
 *
 * @param journalHeads those that the skeleton was taken at
 * @param convention how unknown ancestors were treated
 * @param animals by id, ascending
 * @param pool of the living; empty while none lives
 */
public record SkeletonFigures(
        SortedMap<String, Long> journalHeads, Convention convention, List<OfAnimal> animals, Optional<OfPool> pool) {

    /**
     * @param inbreeding F, in [0, 1]
     * @param meanKinship with the living, itself included if it lives; in [0, 1], {@code NaN} while none lives
     * @param knownFraction of its genome, in [0, 1]
     */
    public record OfAnimal(UUID id, double inbreeding, double meanKinship, double knownFraction) {}

    /** As {@link GenePool} and {@link FounderContributions} have them; founders with a share, by id. */
    public record OfPool(
            int living,
            double meanKinship,
            double geneDiversity,
            double founderGenomeEquivalents,
            double effectiveFounders,
            double knownFraction,
            List<Share> founders,
            double unnamedShare) {}

    /** @param share in (0, 1] */
    public record Share(UUID founderId, double share) {}

    static SkeletonFigures of(Skeleton skeleton, Pedigree pedigree) {
        int[] living = skeleton.living();
        Optional<GenePool> pool = living.length == 0 ? Optional.empty() : Optional.of(pedigree.pool(living));
        var animals = IntStream.range(0, pedigree.size())
                .mapToObj(row -> new OfAnimal(
                        skeleton.animals().get(row).id(),
                        pedigree.inbreeding(row),
                        pool.map(some -> some.meanKinship(row)).orElse(Double.NaN),
                        pedigree.knownFraction(row)))
                .toList();
        return new SkeletonFigures(
                skeleton.journalHeads(), pedigree.convention(), animals, pool.map(some -> ofPool(skeleton, some)));
    }

    private static OfPool ofPool(Skeleton skeleton, GenePool pool) {
        var contributions = pool.founderContributions();
        var shares = IntStream.range(0, contributions.founders().length)
                .mapToObj(i -> new Share(
                        skeleton.animals().get(contributions.founders()[i]).id(),
                        contributions.shares()[i]))
                .toList();
        return new OfPool(
                pool.size(),
                pool.meanKinship(),
                pool.geneDiversity(),
                pool.founderGenomeEquivalents(),
                contributions.effectiveFounders(),
                pool.knownFraction(),
                shares,
                contributions.unnamed());
    }
}
