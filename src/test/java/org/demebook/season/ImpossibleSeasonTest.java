package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
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
            var named = Conflicts.irreducible(season);
            var rest = new HashSet<>(season.constraints());
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

    /** Seasons with all kinds of limits and settled pairs, small enough to look at every set of their constraints. */
    private static Season small(int seed) {
        var herd = new Herd(seed, 6, 4, 3, 3);
        var form = herd.limited(2 + seed % 2, 3 + seed % 2, true).form();
        var locked = new ArrayList<Pair>();
        for (int i = 0; i < seed % 4; i++) {
            locked.add(new Pair(herd.random.nextInt(4), herd.random.nextInt(3)));
        }
        int[] travellers = form.travellersOfCollection();
        if (seed % 3 == 0) {
            Arrays.setAll(travellers, at -> travellers[at] > 3 ? travellers[at] : 0);
        }
        return Season.of(new SeasonForm(
                form.poolSize(),
                form.poolMeanKinship(),
                form.kinship(),
                form.toPool(),
                form.young(),
                form.allowed(),
                form.littersOfMale(),
                form.collection(),
                form.littersOfCollection(),
                travellers,
                seed % 5 == 0 ? 0 : form.least(),
                seed % 5 == 0 ? 1 : form.most(),
                locked.stream().distinct().toList()));
    }

    /** Sets of constraints by ascending size; each tried with every plan. */
    private static int smallestByEnumeration(Season season) {
        var all = season.constraints();
        var free = Herd.everyPlan(season.without(new HashSet<>(all)));
        int[] broken = new int[free.size()];
        for (int bit = 0; bit < all.size(); bit++) {
            var others = new HashSet<>(all);
            others.remove(all.get(bit));
            var alone = season.without(others);
            for (int plan = 0; plan < broken.length; plan++) {
                broken[plan] |= Herd.keepsAll(alone, free.get(plan)) ? 0 : 1 << bit;
            }
        }
        int[] different = Arrays.stream(broken).distinct().toArray();
        int fewest = Integer.MAX_VALUE;
        for (int set = 0; set < 1 << all.size(); set++) {
            int kept = set;
            if (Integer.bitCount(set) < fewest && Arrays.stream(different).allMatch(plan -> (plan & kept) != 0)) {
                fewest = Integer.bitCount(set);
            }
        }
        return fewest;
    }

    @Test
    void no_contradiction_has_fewer_constraints_than_the_one_named() {
        int smaller = 0;
        int travellers = 0;
        int impossible = 0;
        for (int seed = 0; seed < 170; seed++) {
            var season = small(seed);
            if (Plans.isPossible(season)) {
                continue;
            }
            impossible++;
            travellers += season.hasTravelLimits() ? 1 : 0;
            int fewest = smallestByEnumeration(season);
            var irreducible = Conflicts.irreducible(season);
            smaller += irreducible.size() > fewest ? 1 : 0;
            var named = Conflicts.of(season, Watch.NOBODY);
            assertThat(named.smallest()).as("seed %d", seed).isTrue();
            assertThat(named.contradiction()).as("seed %d", seed).hasSize(fewest);
            assertThat(new HittingSets(season, 100_000, Watch.NOBODY)
                            .smallest(irreducible)
                            .orElseThrow())
                    .as("seed %d, by hitting sets", seed)
                    .hasSize(fewest);
            var rest = new HashSet<>(season.constraints());
            rest.removeAll(named.contradiction());
            assertThat(Herd.everyPlan(season.without(rest))).as("seed %d", seed).isEmpty();
            assertThat(Conflicts.of(season, Watch.NOBODY)).isEqualTo(named);
        }
        assertThat(impossible).isGreaterThan(100);
        assertThat(smaller).as("where leaving out one by one is not enough").isGreaterThan(5);
        assertThat(travellers).isGreaterThan(20);
    }

    /** Both ways to the smallest, where leaving out one by one names 42 constraints; work of less than a second. */
    @Test
    void in_a_season_of_keepers_size_the_smallest_contradiction_is_found_too() {
        var herd = new Herd(1, 5, 80, 60, 0);
        var season = herd.season().litters(70).inbreedingAtMost(.05);
        for (int male = 0; male < 60; male++) {
            season.littersOfMale(male, 1 + male % 2);
        }
        var impossible = season.build();
        var named = Conflicts.of(impossible, Watch.NOBODY);
        assertThat(named.smallest()).isTrue();
        assertThat(named.contradiction())
                .hasSizeLessThan(Conflicts.irreducible(impossible).size());
    }

    @Test
    void where_the_work_is_not_enough_or_somebody_stops_it_the_contradiction_is_not_called_smallest() {
        int stopped = 0;
        for (int seed = 0; seed < 60; seed++) {
            var season = small(seed);
            if (Plans.isPossible(season)) {
                continue;
            }
            var irreducible = Conflicts.irreducible(season);
            assertThat(new HittingSets(season, 1, Watch.NOBODY).smallest(irreducible))
                    .as("seed %d", seed)
                    .satisfiesAnyOf(none -> assertThat(none).isEmpty(), few -> assertThat(few.orElseThrow())
                            .hasSizeLessThanOrEqualTo(1));
            var hasty = Conflicts.of(season, progress -> false);
            var named = Conflicts.of(season, Watch.NOBODY);
            stopped += hasty.smallest() ? 0 : 1;
            assertThat(hasty.contradiction().size())
                    .as("seed %d", seed)
                    .isBetween(named.contradiction().size(), irreducible.size());
        }
        assertThat(stopped).isGreaterThan(5);
    }
}
