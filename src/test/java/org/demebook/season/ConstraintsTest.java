package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** Every constraint is kept, and leaving it out changes the plan: it is there for something. */
class ConstraintsTest {
    private static final Effort SMALL = new Effort(60, 2, 10_000, 1);
    private static final int LITTERS = 5;

    private final Herd herd = new Herd(11, 6, 8, 7, 6);

    /** Four collections; animals live where their number leaves when divided by four. */
    private SeasonBuilder season() {
        var season = herd.season().collections(4).litters(LITTERS);
        for (int female = 0; female < 8; female++) {
            season.femaleLivesIn(female, female % 4).young(female, 1 + female % 3);
        }
        for (int male = 0; male < 7; male++) {
            season.maleLivesIn(male, male % 4);
        }
        return season;
    }

    private SeasonPlan plan(UnaryOperator<SeasonBuilder> constraint) {
        var season = constraint.apply(season()).build();
        var plan = (SeasonPlan) new SeasonPlanner(season, SMALL, Watch.NOBODY).plan();
        assertThat(Herd.keepsAll(season, plan.sires(season))).isTrue();
        return plan;
    }

    private final SeasonPlan free = plan(season -> season);

    private static List<Pair> pairs(SeasonPlan plan) {
        return plan.litters().stream().map(SeasonPlan.Litter::pair).toList();
    }

    /** A plan under one constraint more is another plan, and not a better one. */
    private void costs(SeasonPlan constrained) {
        assertThat(pairs(constrained)).isNotEqualTo(pairs(free));
        assertThat(constrained.after()).isGreaterThan(free.after());
        assertThat(constrained.bound()).isGreaterThanOrEqualTo(free.bound());
    }

    @Test
    void a_female_has_one_litter() {
        assertThat(pairs(free).stream().map(Pair::female))
                .doesNotHaveDuplicates()
                .hasSize(LITTERS);
    }

    @Test
    void a_refused_pair_is_left_out() {
        var pair = pairs(free).get(0);
        var other = plan(season -> {
            for (int male = 0; male < 7; male++) {
                season.refuse(pair.female(), male);
            }
            return season;
        });
        assertThat(pairs(other)).noneMatch(planned -> planned.female() == pair.female());
        costs(other);
    }

    @Test
    void young_are_not_more_inbred_than_allowed() {
        double worst = free.litters().stream()
                .mapToDouble(SeasonPlan.Litter::inbreeding)
                .max()
                .orElseThrow();
        var other = plan(season -> season.inbreedingAtMost(worst - 1e-9));
        assertThat(other.litters()).allMatch(litter -> litter.inbreeding() < worst);
        assertThat(pairs(other)).isNotEqualTo(pairs(free));
    }

    @Test
    void a_male_has_no_more_litters_than_he_may() {
        int busiest = pairs(free).get(0).male();
        for (var pair : pairs(free)) {
            if (litters(free, pair.male()) > litters(free, busiest)) {
                busiest = pair.male();
            }
        }
        int male = busiest;
        assertThat(litters(free, male)).isGreaterThan(1);
        var other = plan(season -> season.littersOfMale(male, 1));
        assertThat(litters(other, male)).isLessThanOrEqualTo(1);
        costs(other);
    }

    private static long litters(SeasonPlan plan, int male) {
        return pairs(plan).stream().filter(pair -> pair.male() == male).count();
    }

    @Test
    void a_collection_has_no_more_litters_than_it_can_hold() {
        int at = pairs(free).get(0).female() % 4;
        long before = littersIn(free, at);
        var other = plan(season -> season.littersOfCollection(at, (int) before - 1));
        assertThat(littersIn(other, at)).isEqualTo(before - 1);
        costs(other);
    }

    private static long littersIn(SeasonPlan plan, int at) {
        return pairs(plan).stream().filter(pair -> pair.female() % 4 == at).count();
    }

    @Test
    void no_more_males_of_a_collection_travel_than_may() {
        int at = free.litters().stream()
                .filter(SeasonPlan.Litter::travels)
                .mapToInt(litter -> litter.pair().male() % 4)
                .findFirst()
                .orElseThrow();
        for (int limit = 0; limit < travellersFrom(free, at); limit++) {
            int most = limit;
            var other = plan(season -> season.travellersOfCollection(at, most));
            assertThat(travellersFrom(other, at)).isLessThanOrEqualTo(most);
            costs(other);
        }
    }

    private static long travellersFrom(SeasonPlan plan, int at) {
        return plan.litters().stream()
                .filter(SeasonPlan.Litter::travels)
                .map(litter -> litter.pair().male())
                .filter(male -> male % 4 == at)
                .distinct()
                .count();
    }

    @Test
    void a_male_that_travels_twice_travels_once() {
        var herd = new Herd(2, 4, 3, 1, 4);
        var season = herd.season().collections(2).maleLivesIn(0, 1).travellersOfCollection(1, 1);
        var plan = (SeasonPlan) new SeasonPlanner(season.litters(3).build(), SMALL, Watch.NOBODY).plan();
        assertThat(plan.litters()).hasSize(3).allMatch(SeasonPlan.Litter::travels);
    }

    @Test
    void a_settled_pair_stands_in_the_plan() {
        var pair = new Pair(0, 0);
        assertThat(pairs(free)).doesNotContain(pair);
        var other = plan(season -> season.lock(0, 0));
        assertThat(pairs(other)).contains(pair);
        assertThat(other.litters())
                .allMatch(litter -> litter.settled() == litter.pair().equals(pair));
        costs(other);
    }

    @Test
    void so_many_litters_as_wanted_and_no_more_than_help_where_the_number_is_free() {
        var fewest = plan(season -> season.littersAtMost(LITTERS));
        var all = plan(season -> season.litters(8));
        assertThat(all.litters()).hasSize(8);
        assertThat(fewest.after()).isLessThanOrEqualTo(free.after());
        assertThat(plan(season -> season.littersAtMost(1)).litters()).hasSizeLessThanOrEqualTo(1);
        assertThat(plan(season -> season.litters(0)).after()).isEqualTo(free.now());
    }

    @Test
    void young_that_count_are_what_the_plan_is_weighed_by() {
        var others = plan(season -> {
            for (int female = 0; female < 8; female++) {
                season.young(female, 8 - female);
            }
            return season;
        });
        assertThat(pairs(others)).isNotEqualTo(pairs(free));
    }

    @Test
    void without_females_or_males_nothing_is_planned() {
        int[] nobody = {};
        for (var season : List.of(
                Season.of(herd.pedigree, herd.pedigree.pool(herd.pool), nobody, herd.males),
                Season.of(herd.pedigree, herd.pedigree.pool(herd.pool), herd.females, nobody))) {
            var plan = (SeasonPlan) new SeasonPlanner(season.build(), SMALL, Watch.NOBODY).plan();
            assertThat(plan.litters()).isEmpty();
            assertThat(plan.after()).isEqualTo(plan.now());
            assertThat(plan.gap()).isLessThan(1e-5);
        }
    }
}
