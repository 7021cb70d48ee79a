package org.demebook.web.today;

import java.util.Comparator;
import java.util.List;
import org.demebook.care.CareKind;

/**
 * A line of the list: one task, or many of a kind that are done together, such as all of a rack.
 *
 * @param rows at least one, all of one kind
 */
public record Line(List<TaskRow> rows) {
    /** Fewer stand by themselves. */
    static final int FEWEST_TOGETHER = 3;

    public boolean isTogether() {
        return rows.size() >= FEWEST_TOGETHER;
    }

    public TaskRow first() {
        return rows.get(0);
    }

    public CareKind kind() {
        return first().task().kind();
    }

    public long count() {
        return rows.size();
    }

    public int daysLate() {
        return rows.stream()
                .map(row -> row.task().overdueDays())
                .max(Comparator.naturalOrder())
                .orElse(0);
    }

    /** One button for all of them: where each has to be written by itself there is none. */
    public boolean isDoneTogether() {
        return first().way().isTap();
    }
}
