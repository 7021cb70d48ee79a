package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Two servers that know the same births give the same answers, to the last bit. */
class OrderTest {
    static LongStream seeds() {
        return RandomPedigree.seeds(25);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void answers_do_not_depend_on_numbers_and_order_in_a_single_bit(long seed) {
        var made = new RandomPedigree(seed, 300, (int) (seed % 4) * 10);
        int[] plain = made.rowsAsMade();
        int[] shuffled = shuffled(made.animals, seed);
        assertThat(answers(made.told(shuffled), shuffled, seed))
                .as("seed %d", seed)
                .isEqualTo(answers(made.told(plain), plain, seed));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_pool_may_be_named_in_any_order(long seed) {
        var made = new RandomPedigree(seed, 300, 20);
        int[] living = IntStream.range(200, 300).toArray();
        int[] turned = IntStream.range(0, 100).map(i -> 299 - i).toArray();
        for (var convention : Convention.values()) {
            var pedigree = made.told(made.rowsAsMade()).under(convention);
            var pool = pedigree.pool(living);
            var other = pedigree.pool(turned);
            assertThat(other.knownFraction()).as("seed %d", seed).isEqualTo(pool.knownFraction());
            assertThat(other.geneDiversity()).as("seed %d", seed).isEqualTo(pool.geneDiversity());
            assertThat(other.meanKinships()).as("seed %d", seed).isEqualTo(pool.meanKinships());
            assertThat(other.founderContributions().effectiveFounders())
                    .as("seed %d", seed)
                    .isEqualTo(pool.founderContributions().effectiveFounders());
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void births_added_later_give_the_same_answers_as_if_told_at_once(long seed) {
        var made = new RandomPedigree(seed, 300, (int) (seed % 4) * 10);
        int[] rows = made.rowsAsMade();
        int[] males = made.noMales();
        var first = Pedigree.builder(200);
        made.tell(first, rows, 0, 200, males);
        var second = first.build().extended(75);
        made.tell(second, rows, 200, 275, males);
        var third = second.build().under(Convention.KNOWN_ONLY).extended(25 + RandomPedigree.MORE);
        made.tell(third, rows, 275, 300, males);
        made.tellMore(third);
        assertThat(answers(third.build(), rows, seed))
                .as("seed %d", seed)
                .isEqualTo(answers(made.told(rows), rows, seed));
    }

    @Test
    void a_pedigree_once_built_does_not_change() {
        var builder = Pedigree.builder(1).founder(0);
        var pedigree = builder.build();
        assertThatIllegalStateException().isThrownBy(() -> builder.founder(0)).withMessageContaining("extend");
        assertThatIllegalStateException().isThrownBy(builder::build);
        assertThat(pedigree.extended(1).young(1, 0, 0).build().inbreeding(1)).isEqualTo(.5);
        assertThat(pedigree.size()).isEqualTo(1);
    }

    @Test
    void kinship_of_founders_is_told_before_that_of_their_young_is_computed() {
        var grown =
                Pedigree.builder(2).founder(0).founder(1).build().extended(1).founder(2);
        assertThatIllegalStateException().isThrownBy(() -> grown.founderKinship(0, 1, .1));
        assertThat(grown.founderKinship(1, 2, .1).build().kinship(1, 2)).isEqualTo(.1);
    }

    private static int[] shuffled(int animals, long seed) {
        var rows = new ArrayList<>(IntStream.range(0, animals).boxed().toList());
        Collections.shuffle(rows, new Random(seed));
        return rows.stream().mapToInt(row -> row).toArray();
    }

    private static List<Object> answers(Pedigree told, int[] rowOf, long seed) {
        var answers = new ArrayList<Object>();
        int[] pool = IntStream.range(200, 300).map(i -> rowOf[i]).toArray();
        for (var convention : Convention.values()) {
            var pedigree = told.under(convention);
            var gene = pedigree.pool(pool);
            answers.add(gene.geneDiversity());
            answers.add(gene.knownFraction());
            answers.add(gene.founderContributions().effectiveFounders());
            answers.add(gene.founderContributions().unnamed());
            answers.add(gene.withLitter(rowOf[250], rowOf[260], 3));
            for (int i = 0; i < rowOf.length; i++) {
                answers.add(pedigree.inbreeding(rowOf[i]));
                answers.add(pedigree.knownFraction(rowOf[i]));
                answers.add(gene.meanKinship(rowOf[i]));
                answers.add(pedigree.kinship(rowOf[i], rowOf[i / 2]));
            }
            answers.add(Arrays.deepToString(pedigree.kinship(Arrays.copyOf(pool, 9), Arrays.copyOfRange(pool, 9, 30))));
        }
        var drop = told.pool(pool).geneDrop(100, seed);
        answers.add(drop.geneDiversity());
        answers.add(drop.founderGenomesByRetention());
        answers.add(Arrays.toString(drop.genomeUniqueness()));
        var ancestors = told.pool(pool).effectiveAncestors(20);
        answers.add(Arrays.toString(ancestors.marginalShares()));
        answers.add(told.kinshipRange(rowOf[280], rowOf[290], 50, seed));
        double[] generations = told.depth().equivalentGenerations();
        double[] completeness = told.depth().completeness(5);
        for (int row : rowOf) {
            answers.add(generations[row]);
            answers.add(completeness[row]);
        }
        return answers;
    }
}
