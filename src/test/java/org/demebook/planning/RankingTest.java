package org.demebook.planning;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;
import org.demebook.planning.Ranking.Pair;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RankingTest {
    private static final double MAXIMUM = 1 / 16.0;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void the_best_pairs_are_those_that_sorting_all_of_them_puts_first(long seed) {
        var random = new Random(seed);
        var pedigree = randomPedigree(400, random);
        int[] living = IntStream.range(100, 400).toArray();
        var pool = pedigree.pool(living);
        var females = IntStream.of(living).filter(row -> row % 2 == 0).toArray();
        var males = IntStream.of(living).filter(row -> row % 2 == 1).toArray();
        Ranking.Allowed apart = (dam, sire) -> dam % 7 != sire % 7;
        var all = new ArrayList<Pair>();
        for (int dam : females) {
            for (int sire : males) {
                double kinship = pedigree.kinship(dam, sire);
                if (kinship <= MAXIMUM + Ranking.ROUNDING && apart.pair(dam, sire)) {
                    all.add(new Pair(dam, sire, kinship, (pool.meanKinship(dam) + pool.meanKinship(sire)) / 2));
                }
            }
        }
        all.sort(Pair.BEST_FIRST);
        assertThat(all).as("seed " + seed).hasSizeGreaterThan(1000);

        for (int limit : new int[] {1, 10, 200}) {
            assertThat(Ranking.of(pedigree, pool, females, males, apart, MAXIMUM, limit))
                    .as("seed %d, best %d", seed, limit)
                    .extracting(pair -> List.of(pair.dam(), pair.sire()))
                    .isEqualTo(all.subList(0, limit).stream()
                            .map(pair -> List.of(pair.dam(), pair.sire()))
                            .toList());
        }
    }

    private static Pedigree randomPedigree(int size, Random random) {
        var builder = Pedigree.builder(size);
        for (int row = 0; row < size; row++) {
            if (row < 40) {
                builder.founder(row);
            } else {
                int from = Math.max(0, row - 120);
                int sire = from + random.nextInt(row - from) | 1;
                int dam = from + random.nextInt(row - from) & ~1;
                builder.young(row, sire < row ? sire : 1, dam);
            }
        }
        return builder.build();
    }
}
