package org.demebook.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SexRatioTest {
    @Test
    void a_litter_of_one_sex_is_a_matter_of_its_size() {
        // computed: 1/256 and 1/2048
        assertThat(SexRatio.chanceOfAll(8)).isCloseTo(0.0039, within(0.00005));
        assertThat(SexRatio.chanceOfAll(11)).isCloseTo(0.00049, within(0.000005));
        assertThat(SexRatio.chanceOfAll(3)).isEqualTo(1 / 8.0);
    }

    @Test
    void the_counts_of_cuban_boas_lie_two_and_a_half_deviations_from_half() {
        // counts: Frynta, Vejvodová & Šimková (2016), abstract; z computed
        assertThat(new SexRatio(174, 132).deviations()).isCloseTo(2.40, within(0.005));
        assertThat(new SexRatio(132, 174).deviations()).isCloseTo(-2.40, within(0.005));
        assertThat(new SexRatio(0, 0).deviations()).isZero();
    }
}
