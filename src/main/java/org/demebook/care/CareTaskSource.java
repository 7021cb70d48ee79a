package org.demebook.care;

import java.time.LocalDate;
import java.util.List;
import org.demebook.keeper.Standing;

/** A room that knows of things to do. */
public interface CareTaskSource {
    /**
     * The tasks that concern animals in the asker's collections, in any order, with those that are overdue and those of
     * the year to come. Whether one was done by a tap is not the source's concern; what was recorded (a meal, a litter) is:
     * then the task is no longer there.
     *
     * @param today the day as the asker knows it
     */
    List<CareTask> tasks(Standing by, LocalDate today);
}
