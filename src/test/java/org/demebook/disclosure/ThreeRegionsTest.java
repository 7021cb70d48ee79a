package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.disclosure.Regions.suppressed;
import static org.demebook.disclosure.Regions.tally;
import static org.demebook.disclosure.Regions.threeRegions;
import static org.demebook.disclosure.Regions.withheld;
import static org.demebook.disclosure.Regions.withholding;

import java.util.List;
import java.util.Map;
import org.demebook.disclosure.Audit.Interval;
import org.junit.jupiter.api.Test;

/**
 * The table of three regions, with what is expected of it worked out apart from this code: sensitive cells by hand, the
 * lightest pattern, its bounds and the number of tables that agree with it by enumeration of all patterns and tables.
 */
class ThreeRegionsTest {
    private static final Rules RULES = new Rules(3, 15);
    private static final String[] LIGHTEST = {"Middle·F", "Middle·M", "Middle·U", "South·F", "South·M", "South·U"};

    private final Tally table = tally(threeRegions());

    @Test
    void three_cells_are_sensitive() {
        assertThat(Sensitivity.figures(table, RULES).keySet())
                .extracting(Figure::name)
                .containsExactly("Middle·F", "Middle·U", "South·M");
    }

    @Test
    void the_least_that_can_be_withheld_beside_them_is_24_animals() {
        var release = Suppression.choose(List.of(), table, RULES);

        assertThat(withheld(release)).containsExactlyInAnyOrder(LIGHTEST);
        assertThat(suppressed(release)).isEqualTo(22 + 24);
        assertThat(Audit.of(List.of(), release, RULES).passed()).isTrue();
    }

    @Test
    void what_the_public_can_work_out_then() {
        assertThat(Audit.intervals(withholding(table, LIGHTEST), RULES))
                .containsAllEntriesOf(Map.of(
                        "Middle·F", new Interval(1, 19),
                        "Middle·U", new Interval(0, 17),
                        "South·M", new Interval(0, 10)));
    }

    @Test
    void where_only_the_sensitive_cells_are_withheld_the_audit_fails() {
        var audit = Audit.of(List.of(), withholding(table, "Middle·F", "Middle·U", "South·M"), RULES);

        assertThat(audit.passed()).isFalse();
        assertThat(audit.report()).startsWith("12, 8, 2 recovered exactly");
    }

    @Test
    void where_their_keeper_waives_protection_they_are_told() {
        var waived = tally(threeRegions(), "D");
        assertThat(Sensitivity.figures(waived, RULES).keySet())
                .extracting(Figure::name)
                .containsExactly("South·M");
        assertThat(Suppression.choose(List.of(), waived, RULES).told())
                .contains("Middle·U", "Middle·F", "Middle·total");
    }

    @Test
    void keepers_of_one_household_are_judged_together() {
        var cells = threeRegions();
        cells.put("South·F", "G5 I2");
        cells.put("South·M", "G2");
        cells.put("South·U", "G6 I3");
        assertThat(Sensitivity.figures(tally(cells), RULES).keySet())
                .extracting(Figure::name)
                .containsExactly("Middle·F", "Middle·U", "South·F", "South·M", "South·U", "South·total");
    }

    // 153 by enumeration: contents of the two withheld rows that agree with all totals
    @Test
    void one_hundred_and_fifty_three_tables_agree_with_what_is_told() {
        int[] middle = {12, 8, 8};
        int[] south = {7, 2, 9};
        int tables = 0;
        int[] most = {0, 0, 0};
        for (int f = 0; f <= middle[0] + south[0]; f++) {
            for (int m = 0; m <= middle[1] + south[1]; m++) {
                int u = 28 - f - m;
                if (u >= 0 && u <= middle[2] + south[2]) {
                    tables++;
                    most = new int[] {Math.max(most[0], f), Math.max(most[1], 10 - m), Math.max(most[2], u)};
                }
            }
        }
        var intervals = Audit.intervals(withholding(table, LIGHTEST), RULES);
        assertThat(tables).isEqualTo(153);
        assertThat(intervals.get("Middle·F").highest()).isEqualTo(most[0]);
        assertThat(intervals.get("South·M").highest()).isEqualTo(most[1]);
        assertThat(intervals.get("Middle·U").highest()).isEqualTo(most[2]);
    }
}
