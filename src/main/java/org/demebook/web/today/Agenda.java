package org.demebook.web.today;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import org.demebook.care.CareKind;
import org.demebook.care.CareTaskView;

/**
 * The open tasks as a keeper goes through them.
 *
 * @param waiting others wait for an answer of the keeper's
 * @param late past its last day
 * @param today due today, or before and not late yet
 * @param ahead of the next days, by day
 * @param births expected, the next one first
 */
public record Agenda(List<Line> waiting, List<Line> late, List<Line> today, List<Line> ahead, List<Line> births) {
    static final int DAYS_AHEAD = 14;
    static final int DAYS_TO_A_BIRTH = 150;

    /** @param tasks in the order of their days */
    static Agenda of(List<CareTaskView> tasks, String base, LocalDate today) {
        var rows = tasks.stream().map(task -> new TaskRow(task, base, today)).toList();
        var mine = rows.stream().filter(row -> !row.way().othersWait()).toList();
        Predicate<TaskRow> birth = row -> row.isExpected() && !row.isLate();
        Predicate<TaskRow> due = row -> !birth.test(row) && !row.isLate();
        return new Agenda(
                single(rows, row -> row.way().othersWait()),
                lines(mine, TaskRow::isLate, row -> row.task().kind()),
                lines(mine, due.and(row -> !row.task().dueOn().isAfter(today)), row -> row.task()
                        .kind()),
                lines(
                        mine,
                        due.and(row -> row.task().dueOn().isAfter(today)
                                && !row.task().dueOn().isAfter(today.plusDays(DAYS_AHEAD))),
                        row -> row.task().dueOn() + " " + row.task().kind()),
                single(mine, birth));
    }

    private static List<Line> single(List<TaskRow> rows, Predicate<TaskRow> wanted) {
        return rows.stream().filter(wanted).map(row -> new Line(List.of(row))).toList();
    }

    /** Those of one group stand together where they are many, at the place of the first. */
    private static List<Line> lines(List<TaskRow> rows, Predicate<TaskRow> wanted, Function<TaskRow, Object> group) {
        var groups = new LinkedHashMap<Object, List<TaskRow>>();
        for (var row : rows) {
            if (wanted.test(row)) {
                // tasks in a keeper's own words have nothing in common
                var key = row.task().kind() == CareKind.OWN ? row.task().key() : group.apply(row);
                groups.computeIfAbsent(key, each -> new ArrayList<>()).add(row);
            }
        }
        var lines = new ArrayList<Line>();
        for (var together : groups.values()) {
            if (together.size() < Line.FEWEST_TOGETHER) {
                together.forEach(row -> lines.add(new Line(List.of(row))));
            } else {
                lines.add(new Line(together));
            }
        }
        return lines;
    }

    public boolean isEmpty() {
        return waiting.isEmpty() && late.isEmpty() && today.isEmpty() && ahead.isEmpty() && births.isEmpty();
    }

    public int lateCount() {
        return count(late);
    }

    public int todayCount() {
        return count(today);
    }

    private static int count(List<Line> lines) {
        return (int) lines.stream().mapToLong(Line::count).sum();
    }
}
