package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.demebook.season.Constraint.LittersAtMost;
import org.demebook.season.Constraint.LittersOfCollection;
import org.demebook.season.Constraint.LittersOfMale;
import org.demebook.season.Constraint.LittersWanted;
import org.demebook.season.Constraint.PairLocked;
import org.demebook.season.Constraint.PairsOfFemale;
import org.demebook.season.Constraint.TravellersOfCollection;
import org.junit.jupiter.api.Test;

/** A season without a plan names what cannot be kept together. */
class ImpossibleSeasonTest {
    private final Herd herd = new Herd(1, 6, 4, 3, 3);

    private static List<Constraint> contradiction(SeasonBuilder season) {
        var planned = new SeasonPlanner(season.build(), Effort.USUAL, Watch.NOBODY).plan();
        return ((ImpossibleSeason) planned).contradiction();
    }

    @Test
    void more_litters_than_females_cannot_be() {
        assertThat(contradiction(herd.season().litters(5))).containsExactly(new LittersWanted(5));
    }

    @Test
    void collections_that_hold_too_little_are_named_and_others_are_not() {
        var season = herd.season().collections(3).litters(4).littersOfMale(0, 3);
        season.femaleLivesIn(0, 1).femaleLivesIn(1, 1).littersOfCollection(1, 1).littersOfCollection(0, 3);
        assertThat(contradiction(season))
                .containsExactlyInAnyOrder(new LittersOfCollection(1, 1), new LittersWanted(4));
    }

    @Test
    void males_that_may_not_are_named() {
        var season = herd.season().litters(4);
        season.littersOfMale(0, 1).littersOfMale(1, 1).littersOfMale(2, 1);
        assertThat(contradiction(season))
                .containsExactlyInAnyOrder(
                        new LittersOfMale(0, 1),
                        new LittersOfMale(1, 1),
                        new LittersOfMale(2, 1),
                        new LittersWanted(4));
    }

    @Test
    void a_female_who_may_have_nobody_is_named() {
        var season =
                herd.season().litters(4).refuse(2, 0).refuse(2, 1).refuse(2, 2).refuse(1, 1);
        assertThat(contradiction(season)).containsExactlyInAnyOrder(new PairsOfFemale(2), new LittersWanted(4));
    }

    @Test
    void a_settled_pair_that_is_refused_contradicts_itself() {
        assertThat(contradiction(herd.season().lock(1, 1).refuse(1, 1)))
                .containsExactlyInAnyOrder(new PairsOfFemale(1), new PairLocked(new Pair(1, 1)));
    }

    @Test
    void two_settled_pairs_of_one_female_contradict_each_other() {
        assertThat(contradiction(herd.season().lock(1, 1).lock(1, 2)))
                .containsExactlyInAnyOrder(new PairLocked(new Pair(1, 1)), new PairLocked(new Pair(1, 2)));
    }

    @Test
    void more_settled_pairs_than_litters_contradict_the_number() {
        assertThat(contradiction(herd.season().littersAtMost(1).lock(1, 1).lock(2, 2)))
                .containsExactlyInAnyOrder(
                        new PairLocked(new Pair(1, 1)), new PairLocked(new Pair(2, 2)), new LittersAtMost(1));
    }

    /** Three males of one collection, two may travel, each has one litter: three litters elsewhere cannot be. */
    @Test
    void travellers_that_do_not_fit_a_network_are_named() {
        var season = herd.season().collections(2).litters(3).travellersOfCollection(1, 2);
        for (int male = 0; male < 3; male++) {
            season.maleLivesIn(male, 1).littersOfMale(male, 1);
        }
        assertThat(contradiction(season))
                .containsExactlyInAnyOrder(
                        new TravellersOfCollection(1, 2),
                        new LittersOfMale(0, 1),
                        new LittersOfMale(1, 1),
                        new LittersOfMale(2, 1),
                        new LittersWanted(3));
    }

    @Test
    void nothing_named_can_be_left_out_and_all_together_have_no_plan() {
        int impossible = 0;
        for (int seed = 0; seed < 400; seed++) {
            var season = new Herd(seed, 6, 4, 3, 3).limited(3, 3 + seed % 2, true);
            if (!Herd.everyPlan(season).isEmpty()) {
                continue;
            }
            impossible++;
            var named = Conflicts.of(season);
            var rest = new java.util.HashSet<>(season.constraints());
            rest.removeAll(named);
            var alone = season.without(rest);
            assertThat(Herd.everyPlan(alone)).as("seed %d", seed).isEmpty();
            for (var one : named) {
                assertThat(Herd.everyPlan(alone.without(Set.of(one))))
                        .as("seed %d without %s", seed, one)
                        .isNotEmpty();
            }
        }
        assertThat(impossible).isGreaterThan(30);
    }
}
