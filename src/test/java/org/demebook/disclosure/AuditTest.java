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

    @Test
    void the_report_says_what_is_exact_and_else_what_is_too_close() {
        assertThat(new Audit(List.of(finding("a", 3, 3, 3, false), finding("b", 4, 2, 9, true))).report())
                .isEqualTo("3 recovered exactly (a)");
        var close = new Audit(List.of(finding("a", 3, 2, 3, false), finding("a", 3, 2, 4, false)));
        assertThat(close.report()).isEqualTo("too close: a");
        assertThat(close.unsafe()).containsExactly("a");
        assertThat(new Audit(List.of(finding("b", 4, 4, 4, true))).report()).isEqualTo("passed");
    }

    private static Finding finding(String subject, int value, long lowest, long highest, boolean isSafe) {
        return new Finding(subject, subject, "the public", value, lowest, highest, isSafe);
    }
}
