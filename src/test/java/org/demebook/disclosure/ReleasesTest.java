package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.disclosure.Regions.suppressed;
import static org.demebook.disclosure.Regions.tally;
import static org.demebook.disclosure.Regions.threeRegions;
import static org.demebook.disclosure.Regions.withheld;
import static org.demebook.disclosure.Regions.withholding;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Random;
import org.demebook.Thorough;
import org.junit.jupiter.api.Test;

/** Two dates: what was told stays told, and what lies between is somebody's litter. */
class ReleasesTest {
    private static final Rules RULES = new Rules(3, 15);
    private static final String[] LIGHTEST = {"Middle·F", "Middle·M", "Middle·U", "South·F", "South·M", "South·U"};

    private final Release lastYear = withholding(tally(threeRegions()), LIGHTEST);

    @Test
    void a_litter_of_eleven_is_the_difference_of_two_totals() {
        var now = withholding(afterTheLitter(), LIGHTEST);

        var audit = Audit.of(List.of(lastYear), now, RULES);
        assertThat(Audit.of(List.of(), now, RULES).passed()).isTrue();
        assertThat(audit.passed()).isFalse();
        assertThat(audit.unsafe()).contains("change of Middle·total since release 1");
        assertThat(audit.report()).contains("11,").contains("recovered exactly");
    }

    @Test
    void so_the_total_is_held_back() {
        var release = Suppression.choose(List.of(lastYear), afterTheLitter(), RULES);

        assertThat(release.told()).doesNotContain("Middle·total", "total").contains("North·total", "North·F");
        assertThat(Audit.of(List.of(lastYear), release, RULES).passed()).isTrue();
    }

    @Test
    void what_many_changed_is_told_again() {
        var cells = threeRegions();
        cells.put("North·F", "A6 B5 C4");
        var release = Suppression.choose(List.of(lastYear), tally(cells), RULES);

        assertThat(withheld(release)).containsExactlyInAnyOrder(LIGHTEST);
    }

    @Test
    void the_pattern_stays_where_nothing_happened() {
        var release = Suppression.choose(List.of(lastYear), tally(threeRegions()), RULES);
        assertThat(withheld(release)).containsExactlyInAnyOrder(LIGHTEST);
    }

    @Test
    void a_pattern_that_moves_uncovers_what_it_covered() {
        // safe by itself; with last year's, Middle·F is the only one of its column that was told in neither
        var moved = withholding(
                tally(threeRegions()),
                "Middle·F",
                "Middle·M",
                "Middle·U",
                "North·F",
                "North·M",
                "North·U",
                "South·M",
                "South·U");
        assertThat(Audit.of(List.of(), moved, RULES).passed()).isTrue();

        var audit = Audit.of(List.of(lastYear), moved, RULES);
        assertThat(audit.passed()).isFalse();
        assertThat(audit.unsafe()).contains("Middle·F");
    }

    @Test
    void what_was_told_while_a_keeper_had_waived_protection_does_not_stop_the_next_release() {
        var waived = Suppression.choose(List.of(), tally(threeRegions(), "D"), RULES);
        var release = Suppression.choose(List.of(waived), tally(threeRegions()), RULES);

        assertThat(release.told()).doesNotContain("Middle·F", "Middle·U").contains("North·total", "total");
        assertThat(Audit.of(List.of(waived), release, RULES).passed()).isTrue();
    }

    @Test
    void three_releases_are_looked_at_together() {
        var second = Suppression.choose(List.of(lastYear), afterTheLitter(), RULES);
        var cells = threeRegions();
        cells.put("Middle·F", "D9 E13 F1");
        cells.put("North·M", "A4 B5 C2");
        var third = Suppression.choose(List.of(lastYear, second), tally(cells), RULES);

        assertThat(third.told()).doesNotContain("Middle·total").contains("North·M");
        assertThat(Audit.of(List.of(lastYear, second), third, RULES).passed()).isTrue();
    }

    @Test
    void no_change_of_one_or_two_keepers_is_narrowed_to_less_than_it_needs() {
        int held = 0;
        int pairs = Thorough.size("demebook.releases", 150, 1_500);
        for (long seed = 0; seed < pairs; seed++) {
            var random = new Random(seed);
            var before = new TwoDates(random);
            var first = Suppression.choose(List.of(), before.first(), RULES);
            var second = Suppression.choose(List.of(first), before.second(), RULES);

            before.attack(withheld(first), withheld(second), "seed " + seed);
            held += suppressed(second);
        }
        assertThat(held).isPositive();
    }

    private static Tally afterTheLitter() {
        var cells = new LinkedHashMap<>(threeRegions());
        cells.put("Middle·F", "D9 E13 F1");
        return tally(cells);
    }
}
