package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.demebook.kinship.EffectiveSize;
import org.demebook.kinship.Pedigree;
import org.junit.jupiter.api.Test;

/** Seasons ahead, against what theory says of populations that are simple enough. */
class SeasonsAheadTest {
    private static final Effort SMALL = new Effort(3, 1, 3_000, 1);
    private static final LitterChance TWO = new LitterChance(1, 2, 1);

    /** Founders of both sexes, even numbers are females; all breed this season. */
    private static SeasonsAhead founders(int count, int seasons, Course course) {
        var builder = Pedigree.builder(count);
        IntStream.range(0, count).forEach(builder::founder);
        var living = IntStream.range(0, count)
                .mapToObj(row -> new Living(row, row % 2 == 0, 0, seasons))
                .toList();
        return new SeasonsAhead(builder.build(), living, course, SMALL);
    }

    /** Generations apart, each pair has two young. */
    private static Course pairs(int litters) {
        return new Course(1, litters, TWO, 1, 1, 0, 1, .01, Season.NO_LIMIT);
    }

    /**
     * Where each of N animals has two young and dies, mean kinship rises by (1 − F)/(4·N), F the mean inbreeding of the
     * parents: by the recursion of docs/methods/births.md. Of eight founders nobody needs to be inbred in three generations
     * (Wright 1921, maximum avoidance of inbreeding, from memory), so diversity falls by 1/32 four times.
     */
    @Test
    void with_as_many_young_of_every_animal_diversity_falls_by_what_theory_says() {
        var seasons = founders(8, 1, pairs(4)).expected(12).seasons();
        for (int season = 0; season <= 4; season++) {
            assertThat(seasons.get(season).geneDiversity()).isEqualTo((30. - season) / 32);
        }
        for (int season = 1; season <= 12; season++) {
            var before = seasons.get(season - 1);
            var then = seasons.get(season);
            assertThat(then.geneDiversity())
                    .as("season %d", season)
                    .isCloseTo(before.geneDiversity() - (1 - before.meanInbreeding()) / 32, within(1e-14));
            assertThat(then.animals()).isEqualTo(8);
            assertThat(then.litters()).isEqualTo(4);
        }
    }

    /**
     * Families of the same size: Ne = 2·N (Wright 1938, from memory), GD(t) = GD(0)·(1 − 1/(2·Ne))^t in the long run. With kin
     * avoided inbreeding lags behind by about as many generations as it takes to have all N for ancestors, log₂ N, and a few
     * for the animals' kinship with themselves; so a season costs up to (log₂ N + 3)/(4·N) more than that, in parts.
     */
    @Test
    void in_the_long_run_it_falls_as_at_an_effective_size_of_twice_the_animals() {
        for (int animals : new int[] {12, 24, 48}) {
            var outlook = founders(animals, 1, pairs(animals / 2)).expected(40);
            double ideal = 1 - EffectiveSize.retained(2 * animals, 1);
            double lag = (Math.log(animals) / Math.log(2) + 3) / (4 * animals);
            assertThat(outlook.lossPerSeason()).as("%d animals", animals).isBetween(ideal, ideal * (1 + lag));
        }
    }

    @Test
    void generations_twice_as_long_lose_as_much_in_twice_the_years() {
        var short1 = new Course(1, 6, TWO, 1, 1, 0, 1, .01, Season.NO_LIMIT);
        var long2 = new Course(2, 6, TWO, 1, 1, 0, 1, .01, Season.NO_LIMIT);
        var first = founders(12, 1, short1).expected(20).below(.8);
        var second = founders(12, 1, long2).expected(20).below(.8);
        assertThat(second.orElseThrow().years())
                .isCloseTo(2 * first.orElseThrow().years(), within(1e-12));
    }

    /**
     * Animals that breed from the second to the fourth season, against such as breed from the third to the fifth, in a pool of the
     * same size. With n born each season and generations of L seasons, a season costs 1/(2·Ne·L), Ne = (4·n·L − 2)/(V + 2)
     * (Hill 1972, from memory); L lies between the first and the last litter, and V, the variance of families, is below the 2 of
     * random ones and not below 0.
     */
    @Test
    void longer_generations_lose_less_in_a_season_as_theory_says() {
        var course = new Course(1, 6, TWO, 2, 4, 1, 2, .125, 40);
        var usual = founders(40, 4, course);
        var longer = usual.withLongerGenerations(2);
        var now = usual.expected(40);
        var then = longer.expected(40);
        assertThat(then.last().animals()).isBetween(36, 40);
        assertThat(now.last().animals()).isBetween(36, 40);
        assertThat(now.lossPerSeason()).isBetween(loss(12, 4, 0), loss(12, 2, 2));
        assertThat(then.lossPerSeason()).isBetween(loss(8, 6, 0), loss(8, 4, 2)).isLessThan(now.lossPerSeason());
    }

    private static double loss(int born, double generation, double variance) {
        return 1 / (2 * generation * (4 * born * generation - 2) / (variance + 2));
    }

    /** n unrelated founders have 1 − 1/(2·n); one more in a pool of N makes it (N²·MK + ½)/(N + 1)². */
    @Test
    void one_more_founder_is_worth_what_the_arithmetic_says_at_once_and_more_later() {
        var alone = founders(6, 1, pairs(3));
        assertThat(alone.withFounders(1, 0).expected(0).last().geneDiversity()).isCloseTo(1 - 1 / 14., within(1e-15));
        var herd = new Herd(3, 6, 6, 5, 4);
        var usual = herd(herd, 6);
        double before = usual.expected(0).last().geneDiversity();
        for (int more = 1; more <= 3; more++) {
            double size = herd.pool.length + more;
            double kinship = (herd.pool.length * herd.pool.length * (1 - before) + more / 2.) / (size * size);
            assertThat(usual.withFounders(more, 0).expected(0).last().geneDiversity())
                    .isCloseTo(1 - kinship, within(1e-14));
        }
        double later = usual.expected(8).last().geneDiversity();
        double with = usual.withFounders(1, 0).expected(8).last().geneDiversity();
        double withThree = usual.withFounders(2, 1).expected(8).last().geneDiversity();
        assertThat(with).isGreaterThan(later + .01);
        assertThat(withThree).isGreaterThan(later + .01);
    }

    private static SeasonsAhead herd(Herd herd, int places) {
        var living = IntStream.of(herd.pool)
                .mapToObj(row ->
                        new Living(row, Arrays.stream(herd.females).anyMatch(female -> female == row), 0, 1 + row % 3))
                .toList();
        var course = new Course(1, 3, new LitterChance(.8, 4, .75), 2, 3, 1, 2, .125, Math.max(places, 15));
        return new SeasonsAhead(herd.pedigree, living, course, SMALL);
    }

    /** One season of settled litters is what the plan of the season says of it. */
    @Test
    void the_first_season_is_that_of_the_plan() {
        var herd = new Herd(7, 6, 4, 4, 6);
        var living = IntStream.of(herd.pool)
                .mapToObj(row -> new Living(row, row % 2 == 0, Living.NEVER, row % 3 == 0 ? 1 : 5))
                .toList();
        int[] stay = living.stream().filter(Living::stays).mapToInt(Living::row).toArray();
        var season = Season.of(herd.pedigree, herd.pedigree.pool(stay), herd.females, herd.males)
                .litters(3);
        var litters = IntStream.range(0, 3)
                .mapToObj(i -> new Litter(herd.females[i], herd.males[i], new LitterChance(1, 1 + i, 1)))
                .toList();
        IntStream.range(0, 3).forEach(i -> season.lock(i, i).young(i, 1 + i));
        var plan = (SeasonPlan) new SeasonPlanner(season.build(), SMALL, Watch.NOBODY).plan();
        var outlook = new SeasonsAhead(herd.pedigree, living, pairs(0), SMALL).expected(1, litters);
        assertThat(outlook.last().geneDiversity()).isCloseTo(plan.geneDiversityAfter(), within(1e-14));
        assertThat(outlook.last().litters()).isEqualTo(3);
        assertThat(outlook.last().animals()).isEqualTo(stay.length + 6);
    }

    @Test
    void a_first_season_without_litters_is_one() {
        var ahead = founders(8, 3, pairs(4));
        assertThat(ahead.expected(2, List.of()).seasons().stream().map(Outlook.Ahead::litters))
                .containsExactly(0, 0, 4);
        assertThat(ahead.expected(2).seasons().stream().map(Outlook.Ahead::litters))
                .containsExactly(0, 4, 4);
        assertThat(ahead.drawn(1, List.of(), 3, 1).seasons().get(1).high()).isEqualTo(15. / 16);
    }

    @Test
    void as_many_whole_young_are_born_as_are_expected() {
        var course = new Course(1, 2, new LitterChance(.8, 1, .9), 1, 100, 0, 9, 1, Season.NO_LIMIT);
        var seasons = founders(4, 100, course).expected(12).seasons();
        for (int season = 0; season <= 12; season++) {
            assertThat(seasons.get(season).animals()).isEqualTo(4 + (int) Math.floor(season * 2 * .72 + 1e-9));
        }
    }

    @Test
    void animals_mature_rest_and_leave() {
        // the pair breeds in the first and the third season; its first two young in the fourth, and leave after the
        // fifth; those of
        // the third in the sixth, those of the fourth in the seventh
        var course = new Course(1, 9, TWO, 3, 4, 1, 9, .01, Season.NO_LIMIT);
        assertThat(litters(founders(2, 3, course), 7)).containsExactly(0, 1, 0, 1, 1, 0, 1, 1);
        // without rest, mature in the next season: dam and daughter in the second, in the third the daughter and two of
        // the second
        var quick = new Course(1, 9, TWO, 1, 2, 0, 9, .01, Season.NO_LIMIT);
        assertThat(litters(founders(2, 2, quick), 3)).containsExactly(0, 1, 2, 3);
        // a male with one litter a season, so the second female waits
        var few = new Course(1, 9, TWO, 1, 2, 0, 1, .01, Season.NO_LIMIT);
        assertThat(litters(founders(3, 2, few), 1)).containsExactly(0, 1);
    }

    private static int[] litters(SeasonsAhead ahead, int seasons) {
        return ahead.expected(seasons).seasons().stream()
                .mapToInt(Outlook.Ahead::litters)
                .toArray();
    }

    @Test
    void there_are_no_more_animals_than_places_and_a_pool_may_end() {
        var course = new Course(1, 4, TWO, 1, 3, 0, 2, .125, 11);
        assertThat(founders(8, 3, course).expected(9).seasons())
                .allMatch(ahead -> ahead.animals() <= 11)
                .last()
                .matches(ahead -> ahead.animals() == 11);
        var end = founders(8, 2, pairs(0)).expected(3);
        assertThat(end.seasons().stream().map(Outlook.Ahead::animals)).containsExactly(8, 8, 0, 0);
        assertThat(end.last().geneDiversity()).isZero();
    }

    /** Falling as at a constant Ne, a target is passed when the closed form of docs/methods/projection.md says. */
    @Test
    void years_until_a_target_are_those_of_the_closed_form_beyond_the_outlook_too() {
        var seasons = IntStream.rangeClosed(0, 10)
                .mapToObj(season -> new Outlook.Ahead(season, 20, 4, .9 * EffectiveSize.retained(15, season), 0))
                .toList();
        var outlook = new Outlook(1.5, seasons);
        var beyond = outlook.below(.5).orElseThrow();
        assertThat(beyond.beyond()).isTrue();
        assertThat(beyond.years()).isCloseTo(EffectiveSize.yearsUntilBelow(.5, .9, 15, 1.5), within(1e-9));
        var within = outlook.below(.8).orElseThrow();
        assertThat(within.beyond()).isFalse();
        assertThat(within.years()).isCloseTo(EffectiveSize.yearsUntilBelow(.8, .9, 15, 1.5), within(.01));
        assertThat(outlook.below(.95).orElseThrow()).isEqualTo(new Outlook.Until(0, false));
        assertThat(outlook.lossPerSeason()).isCloseTo(1 / 30., within(1e-14));
    }

    @Test
    void by_lot_a_target_is_passed_first_by_the_lower_end_last_by_the_upper() {
        var spread = new Spread(
                2, List.of(new Interval(.9, 0, .9, .9), new Interval(.8, 0, .7, .85), new Interval(.7, 0, .6, .8)));
        assertThat(spread.soonestBelow(.8).orElseThrow().years()).isCloseTo(1, within(1e-12));
        assertThat(spread.below(.75).orElseThrow().years()).isCloseTo(3, within(1e-12));
        assertThat(spread.latestBelow(.82).orElseThrow().years()).isCloseTo(3.2, within(1e-12));
        assertThat(spread.latestBelow(.8).orElseThrow()).isEqualTo(new Outlook.Until(4, true));
    }

    @Test
    void what_does_not_fall_is_not_foretold_to_fall() {
        var still = new Outlook(
                1,
                List.of(
                        new Outlook.Ahead(0, 9, 0, .8, 0),
                        new Outlook.Ahead(1, 9, 0, .85, 0),
                        new Outlook.Ahead(2, 9, 0, .85, 0)));
        assertThat(still.below(.7)).isEmpty();
        assertThat(new Outlook(1, still.seasons().subList(0, 1)).below(.7)).isEmpty();
        assertThat(new Outlook(1, still.seasons().subList(0, 2)).lossPerSeason())
                .isCloseTo(-.05 / .8, within(1e-15));
        assertThatIllegalArgumentException().isThrownBy(() -> still.below(0));
        assertThatIllegalArgumentException().isThrownBy(() -> still.below(Double.NaN));
    }

    /** By lot some litters are missing: on the mean not more is kept than expected, and the seed decides all. */
    @Test
    void by_lot_less_is_kept_than_expected() {
        var herd = herd(new Herd(5, 6, 6, 5, 4), 15);
        var expected = herd.expected(6);
        var drawn = herd.drawn(6, 60, 1);
        assertThat(drawn.seasons().get(0).low())
                .isEqualTo(drawn.seasons().get(0).high());
        for (int season = 2; season <= 6; season++) {
            var interval = drawn.seasons().get(season);
            assertThat(interval.low()).isLessThan(interval.mean());
            assertThat(interval.high()).isGreaterThan(interval.mean());
            assertThat(interval.mean())
                    .isLessThan(expected.seasons().get(season).geneDiversity());
        }
        assertThat(herd.drawn(6, 60, 1)).isEqualTo(drawn);
        assertThat(herd.drawn(6, 60, 2)).isNotEqualTo(drawn);
        assertThat(herd.expected(6)).isEqualTo(expected);
    }

    @Test
    void what_cannot_be_is_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Living(0, true, -1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Living(0, true, 0, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new LitterChance(0, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new LitterChance(.5, 0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new LitterChance(.5, 1, 1.1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Course(0, 1, TWO, 1, 1, 0, 1, .1, Season.NO_LIMIT));
        assertThatIllegalArgumentException().isThrownBy(() -> new Course(1, 1, TWO, 3, 2, 0, 1, .1, Season.NO_LIMIT));
        assertThatIllegalArgumentException().isThrownBy(() -> new Course(1, 1, TWO, 1, 1, 0, 1, .1, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Course(1, 1, TWO, 1, 1, 0, 1, Double.NaN, Season.NO_LIMIT));
    }
}
