package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Set;
import org.demebook.disclosure.Audit.Interval;
import org.demebook.disclosure.Tally.Counted;
import org.junit.jupiter.api.Test;

/** Worked examples of the Handbook on Statistical Disclosure Control (ESSNet, Eurostat) that are about withholding. */
class PublishedVectorsTest {
    private static final Rules RULES = new Rules(3, 20);

    // Geurts (1992), in the handbook: rows (a, b | 7), (c, d | 3), (3, 3 | 6), columns 9 and 7, total 16: a is 3 to 6.
    // The
    // bounds of the other three follow from a; what is in the withheld cells does not matter to them.
    @Test
    void the_feasibility_interval_of_a_two_by_two_block() {
        var cells = new LinkedHashMap<String, String>();
        cells.put("1·1", "P5");
        cells.put("1·2", "P2");
        cells.put("2·1", "P1");
        cells.put("2·2", "P2");
        cells.put("3·1", "P3");
        cells.put("3·2", "P3");
        var release = Regions.withholding(Regions.tally(cells), "1·1", "1·2", "2·1", "2·2");

        assertThat(Audit.intervals(release, RULES))
                .containsEntry("1·1", new Interval(3, 6))
                .containsEntry("1·2", new Interval(1, 4))
                .containsEntry("2·1", new Interval(0, 3))
                .containsEntry("2·2", new Interval(0, 3));
    }

    // the same handbook: marital status by sex 38/17, 7/4, 3/1, total 70; the single woman of the last row becomes a
    // total of
    // the next table, by hours of work, and gives her hours away
    @Test
    void a_single_one_that_is_a_total_of_the_next_table_gives_nothing_away() {
        var base = new ArrayList<String>();
        var figures = new ArrayList<Figure>();
        var units = new ArrayList<Counted>();
        int[][] counts = {{38, 17}, {7, 4}, {3, 1}};
        String[] states = {"married", "single", "divorced"};
        String[] sexes = {"M", "F"};
        String[] hours = {"part", "full"};
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 2; j++) {
                var cell = states[i] + "·" + sexes[j];
                figures.add(new Figure(cell, in -> in.startsWith(cell + "·")));
                for (int h = 0; h < 2; h++) {
                    var part = cell + "·" + hours[h];
                    base.add(part);
                    figures.add(new Figure(part, part::equals));
                    int here = counts[i][j] == 1 ? 1 - h : h == 0 ? counts[i][j] / 2 : counts[i][j] - counts[i][j] / 2;
                    for (int unit = 0; unit < here; unit++) {
                        var who = part + unit;
                        units.add(new Counted(who, part, who, who));
                    }
                }
            }
        }
        figures.add(new Figure("all", in -> true));
        var tally = new Tally(new Plan(List.of(base), figures, List.of()), units, Set.of());
        assertThat(tally.value(tally.plan().figure("all"))).isEqualTo(70);

        var careless = Regions.withholding(tally, "divorced·F·part", "divorced·F·full");
        assertThat(Audit.of(List.of(), careless, RULES).passed()).isFalse();

        var release = Suppression.choose(List.of(), tally, RULES);
        assertThat(release.told()).doesNotContain("divorced·F", "divorced·F·part");
        assertThat(Audit.of(List.of(), release, RULES).passed()).isTrue();
    }
}
