package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;
import org.junit.jupiter.api.Test;

/** A small pedigree whose shares are read off by halves. */
class FounderLinesTest {
    private static final LitterChance TWO = new LitterChance(1, 2, 1);
    /** Founders 0 to 3; 4 is of 0 and 1, 5 of 0 and 1, 6 of 2 and 5, 7 of 4 and 3. */
    private final Pedigree pedigree = pedigree();

    private static Pedigree pedigree() {
        var builder = Pedigree.builder(8);
        IntStream.range(0, 4).forEach(builder::founder);
        return builder.young(4, 0, 1)
                .young(5, 0, 1)
                .young(6, 2, 5)
                .young(7, 4, 3)
                .build();
    }

    private static final Living LAST_OF_THREE = new Living(3, true, 0, 1);
    private static final Living HALF = new Living(4, false, 0, 1);
    private static final Living YOUNG = new Living(7, true, 1, 3);
    private static final Living QUARTER = new Living(6, false, 0, 3);

    @Test
    void carriers_are_told_with_the_expected_share_of_their_genes_the_scarcest_founder_first() {
        var lines = FounderLines.of(pedigree, List.of(LAST_OF_THREE, HALF, QUARTER, YOUNG), List.of());
        assertThat(lines.stream().map(FounderLine::founder)).containsExactly(2, 3, 0, 1);
        assertThat(lines.get(0).carriers()).containsExactly(new FounderLine.Carrier(6, .5, true, true));
        assertThat(lines.get(1).carriers())
                .containsExactly(
                        new FounderLine.Carrier(3, 1, true, false), new FounderLine.Carrier(7, .5, false, true));
        assertThat(lines.get(2).carriers())
                .containsExactly(
                        new FounderLine.Carrier(4, .5, true, false),
                        new FounderLine.Carrier(6, .25, true, true),
                        new FounderLine.Carrier(7, .25, false, true));
        assertThat(lines.stream().map(FounderLine::share)).containsExactly(.5 / 4, 1.5 / 4, 1. / 4, 1. / 4);
    }

    @Test
    void it_is_the_last_chance_of_a_founder_when_nobody_who_carries_its_genes_may_breed_later() {
        var lines = FounderLines.of(pedigree, List.of(LAST_OF_THREE, QUARTER), List.of());
        var three =
                lines.stream().filter(line -> line.founder() == 3).findFirst().orElseThrow();
        assertThat(three.isLastChance()).isTrue();
        assertThat(three.chances()).containsExactly(new FounderLine.Carrier(3, 1, true, false));
        assertThat(lines).filteredOn(FounderLine::isLastChance).containsExactly(three);
        // who grows up in time, and who never breeds though it stays
        assertThat(isLast(new Living(7, true, 1, 2))).isFalse();
        assertThat(isLast(new Living(7, true, 2, 2))).isTrue();
        assertThat(isLast(new Living(7, true, Living.NEVER, 9))).isTrue();
        // where nobody may breed it is no chance at all
        assertThat(FounderLines.of(pedigree, List.of(new Living(3, true, 3, 2)), List.of()))
                .noneMatch(FounderLine::isLastChance);
    }

    private boolean isLast(Living other) {
        return FounderLines.of(pedigree, List.of(LAST_OF_THREE, other, QUARTER), List.of()).stream()
                .filter(line -> line.founder() == 3)
                .allMatch(FounderLine::isLastChance);
    }

    /** By the pedigree in which the young are born: what is there with them, less what is there with the others alone. */
    @Test
    void what_is_lost_without_their_litters_is_the_difference_between_the_two_pools() {
        var young = new Living(7, true, 0, 3);
        var litters = List.of(new Litter(3, 6, TWO), new Litter(7, 6, TWO));
        var lines = FounderLines.of(pedigree, List.of(LAST_OF_THREE, HALF, QUARTER, young), litters);
        var born = pedigree.extended(4)
                .young(8, 6, 3)
                .young(9, 6, 3)
                .young(10, 6, 7)
                .young(11, 6, 7)
                .build();
        double both = born.pool(6, 7, 8, 9, 10, 11).geneDiversity();
        double none = born.pool(6, 7).geneDiversity();
        assertThat(lines).filteredOn(line -> line.founder() == 3).allSatisfy(line -> assertThat(line.lost())
                .isCloseTo(both - none, within(1e-15)));
        var first = FounderLines.of(pedigree, List.of(LAST_OF_THREE, QUARTER), List.of(litters.get(0)));
        assertThat(first).filteredOn(line -> line.founder() == 3).allSatisfy(line -> assertThat(line.lost())
                .isCloseTo(born.pool(6, 8, 9).geneDiversity() - .5, within(1e-15)));
    }

    @Test
    void where_no_carrier_has_a_litter_nothing_is_lost_and_where_nobody_is_left_all() {
        var other = FounderLines.of(pedigree, List.of(LAST_OF_THREE, HALF), List.of(new Litter(3, 4, TWO)));
        double all = 1 - (TWO.expected() * .5 + 2 * .25) / 4;
        assertThat(other).allSatisfy(line -> assertThat(line.lost()).isCloseTo(all, within(1e-8)));
        assertThat(FounderLines.of(pedigree, List.of(LAST_OF_THREE, HALF), List.of()))
                .allMatch(line -> line.lost() == 0);
    }
}
