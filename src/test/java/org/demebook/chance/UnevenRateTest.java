package org.demebook.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.demebook.chance.UnevenRate.Count;
import org.junit.jupiter.api.Test;

class UnevenRateTest {
    private static final long SEED = 20260629;

    @Test
    void many_groups_tell_share_and_overdispersion_that_they_were_drawn_with() {
        var random = new Random(SEED);
        // urns: a third of the groups at 10 %, a third at 20 %, a third at 30 %: share 0.2,
        // correlation = variance of the shares / (0.2 · 0.8) = (0.02 / 3) / 0.16 = 0.0417
        var groups = new ArrayList<Count>();
        for (int i = 0; i < 3000; i++) {
            double share = 0.1 * (1 + i % 3);
            int hit = 0;
            for (int ovum = 0; ovum < 15; ovum++) {
                hit += random.nextDouble() < share ? 1 : 0;
            }
            groups.add(new Count(hit, 15));
        }
        var rate = UnevenRate.of(0.1, groups);
        assertThat(rate.share()).as("seed %d", SEED).isCloseTo(0.2, within(0.01));
        assertThat(rate.overdispersion()).as("seed %d", SEED).isCloseTo(0.0417, within(0.01));
    }

    @Test
    void without_any_group_the_usual_share_is_expected() {
        var rate = UnevenRate.of(0.1, List.of());
        assertThat(rate.share()).isCloseTo(0.1, within(0.02));
        assertThat(rate.overdispersion()).isCloseTo(0.04, within(0.01));
    }

    @Test
    void little_knowledge_makes_a_bad_group_less_surprising() {
        var few = UnevenRate.of(0.1, List.of(new Count(1, 10)));
        var many = UnevenRate.of(0.1, java.util.Collections.nCopies(400, new Count(1, 10)));
        assertThat(few.upperTail(5, 10)).isGreaterThan(2 * many.upperTail(5, 10));
        assertThat(few.upperTail(0, 10)).isCloseTo(1, within(1e-12));
    }

    @Test
    void groups_without_any_member_say_nothing() {
        var with = UnevenRate.of(0.1, List.of(new Count(2, 14), new Count(0, 0)));
        var without = UnevenRate.of(0.1, List.of(new Count(2, 14)));
        assertThat(with.upperTail(3, 12)).isCloseTo(without.upperTail(3, 12), within(1e-12));
    }
}
