package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.disclosure.Regions.tally;
import static org.demebook.disclosure.Regions.withholding;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.demebook.disclosure.Audit.Finding;
import org.demebook.disclosure.Audit.Interval;
import org.junit.jupiter.api.Test;

/** What an audit says, of a row of two cells where one keeper alone is in y; bounds by hand. */
class AuditTest {
    private static final Rules RULES = new Rules(3, 15);

    private final Tally row = tally(row("A4 B3 C2", "D8"));

    private static Map<String, String> row(String x, String y) {
        var cells = new LinkedHashMap<String, String>();
        cells.put("r·x", x);
        cells.put("r·y", y);
        return cells;
    }

    @Test
    void what_is_told_is_found_exactly() {
        var audit = Audit.of(List.of(), withholding(row), RULES);
        assertThat(audit.passed()).isFalse();
        assertThat(audit.unsafe()).containsExactly("r·y", "total·y");
        assertThat(audit.report()).isEqualTo("8, 8 recovered exactly (r·y, total·y)");
    }

    @Test
    void what_is_withheld_is_open_as_far_as_its_total() {
        var release = withholding(row, "r·x", "r·y", "total·x", "total·y");
        assertThat(Audit.intervals(release, RULES))
                .containsOnlyKeys("r·x", "r·y", "total·x", "total·y")
                .containsEntry("r·x", new Interval(0, 17))
                .containsEntry("r·y", new Interval(0, 17));
        // nothing above is told: there is no bound
        assertThat(Audit.intervals(withholding(row, "r·x", "r·y", "total·x", "total·y", "r·total", "total"), RULES))
                .containsEntry("r·y", new Interval(0, -1));
    }

    // the block of Geurts (1992), as in PublishedVectorsTest: the first cell is 3 to 6; here 4 or 6 of one keeper, who
    // needs 50 %
    @Test
    void a_bound_that_is_too_near_on_one_side_is_not_safe() {
        var four = block("P4", "P3", "P2", "P1"); // needs 2 to 6
        assertThat(four.lowest()).isEqualTo(3);
        assertThat(four.highest()).isEqualTo(6);
        assertThat(four.isSafe()).isFalse();
        var six = block("P6", "P1", "", "P3"); // needs 3 to 9
        assertThat(six.lowest()).isEqualTo(3);
        assertThat(six.highest()).isEqualTo(6);
        assertThat(six.isSafe()).isFalse();
    }

    private static Finding block(String a, String b, String c, String d) {
        var cells = new LinkedHashMap<String, String>();
        cells.put("1·1", a);
        cells.put("1·2", b);
        cells.put("2·1", c);
        cells.put("2·2", d);
        cells.put("3·1", "P3");
        cells.put("3·2", "P3");
        var release = withholding(tally(cells), "1·1", "1·2", "2·1", "2·2");
        return finding(Audit.of(List.of(), release, new Rules(1, 50)), "1·1", Knowledge.PUBLIC);
    }

    // x is A's alone, 9; y is D's alone, 8; only the total of 17 is told
    @Test
    void who_knows_one_part_knows_the_other() {
        var two = tally(row("A9", "D8"));
        var audit = Audit.of(List.of(), withholding(two, "r·x", "r·y", "total·x", "total·y"), RULES);

        var everybody = finding(audit, "r·y", Knowledge.PUBLIC);
        assertThat(everybody.lowest()).isZero();
        assertThat(everybody.highest()).isEqualTo(17);
        assertThat(everybody.isSafe()).isTrue();
        var a = finding(audit, "r·y", "A");
        assertThat(a.highest()).isEqualTo(8);
        assertThat(a.isSafe()).isFalse();
        assertThat(finding(audit, "r·x", "D").highest()).isEqualTo(9);
        assertThat(finding(audit, "r·x", "A").lowest()).isEqualTo(9);
        assertThat(audit.passed()).isFalse();
    }

    @Test
    void the_public_is_told_to_the_furthest_even_where_less_would_do() {
        var audit = Audit.of(List.of(), withholding(row, "r·x", "r·y", "total·x", "total·y"), RULES);
        for (var figure : List.of("r·y", "total·y")) {
            assertThat(finding(audit, figure, Knowledge.PUBLIC).lowest()).isZero();
            assertThat(finding(audit, figure, Knowledge.PUBLIC).highest()).isEqualTo(17);
        }
        assertThat(audit.passed()).isTrue();
    }

    private static Finding finding(Audit audit, String subject, String who) {
        return audit.findings().stream()
                .filter(finding ->
                        finding.subject().equals(subject) && finding.who().equals(who))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void the_report_says_what_is_exact_and_else_what_is_too_close() {
        assertThat(new Audit(List.of(finding("a", 3, 3, 3, false), finding("b", 4, 2, 9, true))).report())
                .isEqualTo("3 recovered exactly (a)");
        var close = new Audit(List.of(finding("a", 3, 2, 3, false), finding("a", 3, 2, 4, false)));
        assertThat(close.report()).isEqualTo("too close: a");
        assertThat(close.unsafe()).containsExactly("a");
        assertThat(new Audit(List.of(finding("b", 4, 4, 4, true))).report()).isEqualTo("passed");
        assertThat(new Audit(List.of(finding("a", 3, 3, 3, false), finding("b", 4, 4, 4, true))).unsafe())
                .containsExactly("a");
    }

    private static Finding finding(String subject, int value, long lowest, long highest, boolean isSafe) {
        return new Finding(subject, subject, "the public", value, lowest, highest, isSafe);
    }
}
