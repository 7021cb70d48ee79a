package org.demebook.season;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.demebook.kinship.GeneDrop;
import org.demebook.kinship.Pedigree;

/**
 * What chance may make of a plan: litters that fail, young that do not live, and genes that are handed on by lot.
 *
 * @param geneDiversity 1 − mean kinship of those who will be there: by the lot of litters and young alone
 * @param ofGenes 1 − Σ q² over so many unlinked loci: by the lot of the genes too, those of all births on record included. It
 *     has the same mean, save where founders are related by DNA; the fewer the loci, the wider it lies
 * @param lost by founder that was asked for, the chance that nothing of it is left at a locus
 */
public record AfterLitters(Interval geneDiversity, Interval ofGenes, List<GeneDrop.Estimate> lost) {
    public AfterLitters {
        lost = List.copyOf(lost);
    }

    /**
     * The same arguments give the same figures, on any number of threads. Cost: draws × (a pool's figures, and a gene drop).
     *
     * @param staying rows of those who will be in the pool whatever comes; may be empty
     * @param draws how often litters are drawn, 1 or more
     * @param loci that drop in each draw, 1 or more
     * @param founders rows whose genes are followed
     */
    public static AfterLitters drawn(
            Pedigree pedigree, int[] staying, List<Litter> litters, int draws, int loci, long seed, int... founders) {
        return new Lottery(pedigree, staying, litters, loci, founders).run(draws, seed);
    }

    private static final class Lottery {
        private final Pedigree births;
        private final int[] staying;
        private final List<Litter> litters;
        /** By litter, the row of its first young. */
        private final int[] first;

        private final int loci;
        private final int[] founders;

        Lottery(Pedigree pedigree, int[] staying, List<Litter> litters, int loci, int[] founders) {
            this.staying = staying;
            this.litters = litters;
            this.loci = loci;
            this.founders = founders;
            first = new int[litters.size()];
            int all =
                    litters.stream().mapToInt(litter -> litter.chance().young()).sum();
            var builder = pedigree.extended(all);
            int row = pedigree.size();
            for (int i = 0; i < first.length; i++) {
                first[i] = row;
                for (int young = 0; young < litters.get(i).chance().young(); young++) {
                    builder.young(row++, litters.get(i).sire(), litters.get(i).dam());
                }
            }
            births = all == 0 ? pedigree : builder.build().under(pedigree.convention());
        }

        AfterLitters run(int draws, long seed) {
            long[] seeds = new SplittableRandom(seed).longs(draws).toArray();
            double[] expected = new double[draws];
            double[] ofGenes = new double[draws];
            double[][] lost = new double[founders.length][draws];
            IntStream.range(0, draws).parallel().forEach(draw -> {
                var random = new SplittableRandom(seeds[draw]);
                int[] rows = draw(random);
                for (double[] ofFounder : lost) {
                    ofFounder[draw] = 1;
                }
                if (rows.length > 0) {
                    var pool = births.pool(rows);
                    var drop = pool.geneDrop(loci, random.nextLong());
                    expected[draw] = pool.geneDiversity();
                    ofGenes[draw] = drop.geneDiversity().value();
                    for (int i = 0; i < founders.length; i++) {
                        lost[i][draw] = drop.lost(founders[i]).value();
                    }
                }
            });
            return new AfterLitters(
                    Interval.of(expected),
                    Interval.of(ofGenes),
                    Arrays.stream(lost)
                            .map(Interval::of)
                            .map(of -> new GeneDrop.Estimate(of.mean(), of.standardError()))
                            .toList());
        }

        /** Who will be there. */
        private int[] draw(SplittableRandom random) {
            var rows = IntStream.builder();
            for (int row : staying) {
                rows.add(row);
            }
            for (int i = 0; i < first.length; i++) {
                int young = litters.get(i).chance().draw(random);
                for (int one = 0; one < young; one++) {
                    rows.add(first[i] + one);
                }
            }
            return rows.build().toArray();
        }
    }
}
