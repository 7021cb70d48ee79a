package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EffectiveSizeTest {
    @Test
    void ten_males_and_forty_females_breed_like_thirty_two() {
        // Wright 1931 (from memory)
        assertThat(EffectiveSize.fromSexRatio(10, 40)).isEqualTo(32);
        assertThat(EffectiveSize.fromSexRatio(0, 40)).isZero();
    }

    @Test
    void variance_of_family_size_lowers_it() {
        // Crow & Kimura 1970 (from memory): (4N − 2)/(V + 2)
        assertThat(EffectiveSize.fromFamilyVariance(50, 2)).isEqualTo(49.5);
        assertThat(EffectiveSize.fromFamilyVariance(50, 0)).isEqualTo(99);
        assertThat(EffectiveSize.fromFamilySizes(0, 4, 2, 2)).isCloseTo(14 / (8. / 3 + 2), within(1e-12));
    }

    @Test
    void the_rate_of_inbreeding_gives_it_back() {
        // Falconer & Mackay 1996 (from memory): ΔF = 1/(2Ne); one generation of an ideal population of 25
        double after = .1 + .9 / 50;
        double rate = EffectiveSize.inbreedingRate(.1, after);
        assertThat(EffectiveSize.fromInbreedingRate(rate)).isCloseTo(25, within(1e-9));
        assertThat(EffectiveSize.fromInbreedingRate(0)).isInfinite();
    }

    @Test
    void over_generations_the_smallest_rules() {
        // Wright 1938 (from memory): harmonic mean
        assertThat(EffectiveSize.overGenerations(10, 100, 1000)).isCloseTo(3 / .111, within(1e-9));
    }

    @Test
    void diversity_decays_by_a_constant_share_each_generation() {
        assertThat(EffectiveSize.retained(50, 1)).isCloseTo(.99, within(1e-15));
        assertThat(EffectiveSize.retained(50, 10)).isCloseTo(Math.pow(.99, 10), within(1e-15));
    }

    @ParameterizedTest
    @CsvSource({"20, 95.2", "40, 190.1"})
    void ninety_per_cent_needs_an_effective_size_in_proportion_to_the_generations(int generations, double needed) {
        // Soulé, Gilpin, Conway & Foose 1986 (from memory): 1/(2(1 − .9^(1/G)))
        assertThat(EffectiveSize.neededToRetain(.9, generations)).isCloseTo(needed, within(.05));
        assertThat(EffectiveSize.retained(EffectiveSize.neededToRetain(.9, generations), generations))
                .isCloseTo(.9, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"10, 2", "20, 4", "30, 6", "50, 9"})
    void a_pool_of_419_in_512_falls_below_three_quarters_after_a_few_generations(int effectiveSize, int generations) {
        // By (1 − 1/(2Ne))^t, computed apart from this code.
        double now = 419. / 512;
        assertThat(EffectiveSize.generationsUntilBelow(.75, now, effectiveSize)).hasValue(generations);
        assertThat(now * EffectiveSize.retained(effectiveSize, generations)).isLessThan(.75);
        assertThat(now * EffectiveSize.retained(effectiveSize, generations - 1)).isGreaterThanOrEqualTo(.75);
        double years = EffectiveSize.yearsUntilBelow(.75, now, effectiveSize, 6);
        assertThat(years).isBetween(6. * (generations - 1), 6. * generations);
    }

    @Test
    void a_target_just_met_falls_in_the_first_generation() {
        assertThat(EffectiveSize.generationsUntilBelow(.9, .9, 20)).hasValue(1);
        assertThat(EffectiveSize.yearsUntilBelow(.9, .9, 20, 6)).isZero();
        // Lost by half each generation: Ne 1, from .8 over .4 to .2.
        assertThat(EffectiveSize.yearsUntilBelow(.2, .8, 1, 6)).isCloseTo(12, within(1e-12));
        assertThat(EffectiveSize.generationsUntilBelow(.25, .8, 1)).hasValue(2);
    }

    @Test
    void a_population_of_one_sex_has_no_effective_size() {
        assertThat(EffectiveSize.fromSexRatio(3, 0)).isZero();
        assertThat(EffectiveSize.fromSexRatio(1, 1)).isEqualTo(2);
        assertThat(EffectiveSize.fromSexRatio(1, 3)).isEqualTo(3);
        assertThat(EffectiveSize.fromInbreedingRate(-.01)).isInfinite();
    }

    @Test
    void a_target_already_missed_is_missed_now() {
        assertThat(EffectiveSize.yearsUntilBelow(.9, .85, 20, 6)).isZero();
        assertThat(EffectiveSize.generationsUntilBelow(.9, .85, 20)).hasValue(0);
    }

    @Test
    void what_does_not_shrink_never_falls_below() {
        double never = EffectiveSize.fromInbreedingRate(0);
        assertThat(EffectiveSize.yearsUntilBelow(.75, .9, never, 6)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(EffectiveSize.generationsUntilBelow(.75, .9, never)).isEmpty();
        assertThat(EffectiveSize.retained(never, 10)).isEqualTo(1);
        assertThat(EffectiveSize.yearsUntilBelow(0, .9, 20, 6)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(EffectiveSize.generationsUntilBelow(0, .9, 20)).isEmpty();
    }

    @Test
    void where_a_sex_is_missing_the_next_generation_has_nothing() {
        double none = EffectiveSize.fromSexRatio(5, 0);
        assertThat(EffectiveSize.retained(none, 1)).isZero();
        assertThat(EffectiveSize.yearsUntilBelow(.75, .9, none, 6)).isZero();
        assertThat(EffectiveSize.generationsUntilBelow(.75, .9, none)).hasValue(1);
    }
}
