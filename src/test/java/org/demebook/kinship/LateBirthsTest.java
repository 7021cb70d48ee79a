package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A pedigree grown birth by birth shares what it can with the one before, and none of this can be seen in an answer. */
class LateBirthsTest {
    private static final int U = Pedigree.UNKNOWN;
    private static final int FIRST = 120;

    /** A young of two, one or no known parents, or of its dam alone, below the row; told to any builder. */
    private record Birth(int kind, int sire, int dam, UUID key) {
        static List<Birth> drawn(long seed, int from, int to) {
            var random = new SplittableRandom(~seed);
            return IntStream.range(from, to)
                    .mapToObj(row -> new Birth(
                            random.nextInt(12),
                            random.nextInt(row),
                            random.nextInt(row),
                            new UUID(random.nextLong(), random.nextLong())))
                    .toList();
        }

        void tell(PedigreeBuilder builder, int row) {
            builder.key(row, key);
            switch (kind) {
                case 0 -> builder.founder(row);
                case 1 -> builder.unknownParents(row);
                case 2 -> builder.young(row, U, dam);
                case 3 -> builder.young(row, sire, U);
                case 4 -> builder.parthenogen(row, dam, Fusion.CENTRAL, .5);
                case 5 -> builder.founder(row, .25);
                default -> builder.young(row, sire, dam);
            }
        }
    }

    /** With hidden males, twins and related founders among the first. */
    private static PedigreeBuilder first(PedigreeBuilder builder, long seed) {
        var made = new RandomPedigree(seed, FIRST, 12);
        made.tell(builder, made.rowsAsMade(), 0, FIRST, made.noMales());
        return builder.founderKinship(0, 2, .125).founderKinship(1, 3, .0625);
    }

    private static Pedigree atOnce(long seed, List<Birth> late) {
        var builder = first(Pedigree.builder(FIRST + late.size()), seed);
        for (int i = 0; i < late.size(); i++) {
            late.get(i).tell(builder, FIRST + i);
        }
        return builder.build();
    }

    private static Pedigree extended(Pedigree before, List<Birth> late) {
        var builder = before.extended(late.size());
        for (int i = 0; i < late.size(); i++) {
            late.get(i).tell(builder, before.size() + i);
        }
        return builder.build();
    }

    private static Pedigree oneByOne(Pedigree before, List<Birth> late) {
        var grown = before;
        for (var birth : late) {
            grown = extended(grown, List.of(birth));
        }
        return grown;
    }

    private static List<String> answers(Pedigree told) {
        var answers = new ArrayList<String>();
        int[] pool = IntStream.range(told.size() / 2, told.size()).toArray();
        for (var convention : Convention.values()) {
            var pedigree = told.under(convention);
            answers.add(text(pedigree.inbreeding()));
            answers.add(text(pedigree.knownFractions()));
            answers.add(text(pedigree.relationshipTimes(pedigree.knownFractions())));
            var genes = pedigree.pool(pool);
            answers.add(text(genes.meanKinships()));
            answers.add(text(genes.geneDiversity()));
            answers.add(text(genes.withLitter(pool[0], pool[1], 3)));
            answers.add(text(genes.founderContributions().founders()));
            answers.add(text(genes.founderContributions().shares()));
            answers.add(text(genes.founderContributions().unnamed()));
            answers.add(text(genes.founderContributions().effectiveFounders()));
            for (int row = 1; row < told.size(); row++) {
                answers.add(text(pedigree.kinship(row, told.size() - row)));
            }
            answers.add(text(pedigree.kinship(pool, new int[] {0, told.size() / 2, told.size() - 1})));
        }
        answers.add(text(told.kinshipRange(told.size() - 1, told.size() - 2, 20, 1)));
        answers.add(text(told.pool(pool).effectiveAncestors(30).ancestors()));
        answers.add(text(told.pool(pool).effectiveAncestors(30).marginalShares()));
        var drop = told.pool(pool).geneDrop(64, 1);
        answers.add(text(drop.geneDiversity()));
        answers.add(text(drop.genomeUniqueness()));
        answers.add(text(told.depth().equivalentGenerations()));
        answers.add(text(told.depth().completeness(4)));
        return answers;
    }

    private static String text(Object answer) {
        return Arrays.deepToString(new Object[] {answer});
    }

    private static void same(Pedigree found, Pedigree expected, String what) {
        assertThat(found.animalsInOrder()).as(what).isEqualTo(expected.animalsInOrder());
        assertThat(answers(found)).as(what).isEqualTo(answers(expected));
    }

    static LongStream seeds() {
        return RandomPedigree.seeds(12);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void one_by_one_gives_to_the_bit_what_all_at_once_would(long seed) {
        var late = Birth.drawn(seed, FIRST, FIRST + 60);
        var grown = oneByOne(first(Pedigree.builder(FIRST), seed).build(), late);
        assertThat(grown.births().late().count()).isEqualTo(60);
        same(grown, atOnce(seed, late), "seed " + seed);
    }

    @Test
    void many_are_put_in_order_now_and_then() {
        int more = LateBirths.MOST + 50;
        var late = Birth.drawn(5, FIRST, FIRST + more);
        var grown = oneByOne(first(Pedigree.builder(FIRST), 5).build(), late);
        assertThat(grown.births().late().count()).isEqualTo(50);
        same(grown, atOnce(5, late), "one by one");
        var known = first(Pedigree.builder(FIRST), 5).build();
        same(extended(known, late), atOnce(5, late), "more at a time than may be late");
        same(oneByOne(extended(known, late.subList(0, 30)), late.subList(30, 60)), atOnce(5, late.subList(0, 60)), "");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 5, 400})
    void two_that_grow_from_one_know_nothing_of_each_other(int more) {
        var one = Birth.drawn(7, FIRST, FIRST + more);
        var other = Birth.drawn(8, FIRST, FIRST + more);
        var before = oneByOne(first(Pedigree.builder(FIRST), 3).build(), List.of());
        var was = answers(before);
        var grownOne = oneByOne(before, one);
        var grownOther = oneByOne(before, other);
        var together = extended(before, one);
        same(grownOne, atOnce(3, one), "the first");
        same(grownOther, atOnce(3, other), "the second");
        same(together, atOnce(3, one), "the third");
        assertThat(answers(before)).isEqualTo(was);
    }

    @Test
    void a_builder_that_was_dropped_leaves_no_trace() {
        var before = first(Pedigree.builder(FIRST), 4).build();
        before.extended(2).young(FIRST, 1, 2).key(FIRST, new UUID(1, 1));
        var late = Birth.drawn(9, FIRST, FIRST + 2);
        same(extended(before, late), atOnce(4, late), "the second builder");
    }

    @Test
    void a_key_told_to_a_builder_that_was_dropped_is_free_again() {
        var before = Pedigree.builder(1).founder(0).build();
        before.extended(1).key(1, new UUID(5, 1));
        var grown = before.extended(2).founder(1).founder(2).key(2, new UUID(5, 1));
        assertThat(grown.build().size()).isEqualTo(3);
    }

    @Test
    void births_that_were_put_in_order_grow_on() {
        var late = Birth.drawn(10, FIRST, FIRST + 20);
        var grown = oneByOne(first(Pedigree.builder(FIRST), 6).build(), late.subList(0, 10));
        var known = grown.under(Convention.KNOWN_ONLY);
        assertThat(known.under(Convention.UNRELATED)).isSameAs(grown);
        same(oneByOne(known, late.subList(10, 20)), atOnce(6, late), "from the other convention");
    }

    @Test
    void a_twin_a_hidden_sire_or_a_parent_told_later_puts_all_in_order() {
        var late = Birth.drawn(11, FIRST, FIRST + 5);
        var grown = oneByOne(first(Pedigree.builder(FIRST), 2).build(), late);
        int row = grown.size();
        assertThat(grown.extended(1).twin(row, 5).build().births().late().count())
                .isZero();
        var hidden = grown.extended(1);
        hidden.young(row, hidden.unknownSire(new int[] {row - 1, 1}, new double[] {.5, .5}), 2);
        assertThat(hidden.build().births().late().count()).isZero();
        var turned =
                grown.extended(2).young(row, row + 1, 2).young(row + 1, 3, 4).build();
        assertThat(turned.births().late().count()).isZero();
        assertThat(turned.kinship(row, row + 1))
                .isEqualTo((turned.kinship(row + 1, row + 1) + turned.kinship(row + 1, 2)) / 2);
        var related = grown.extended(2).founder(row).founder(row + 1).founderKinship(row, row + 1, .1);
        assertThat(related.build().births().late().count()).isZero();
    }

    @Test
    void what_contradicts_itself_is_refused_as_ever() {
        var grown = Pedigree.builder(2).founder(0).founder(1).build();
        assertThatIllegalStateException().isThrownBy(() -> grown.extended(1).build());
        assertThatExceptionOfType(PedigreeLoop.class)
                .isThrownBy(() -> grown.extended(1).young(2, 2, 0).build());
        assertThatExceptionOfType(PedigreeLoop.class)
                .isThrownBy(() -> grown.extended(1).young(2, 0, 2).build());
        var keyed = Pedigree.builder(1).founder(0).key(0, new UUID(1, 1)).build();
        assertThatIllegalStateException()
                .isThrownBy(() ->
                        keyed.extended(1).founder(1).key(1, new UUID(1, 1)).build());
    }
}
