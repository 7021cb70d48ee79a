package org.demebook.rearing;

import java.time.LocalDate;
import java.util.List;
import org.demebook.rearing.Readiness.LeavingCondition;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Whether a young may leave on a day.
 *
 * @param animal studbook number
 * @param on the day that it is about
 * @param ready every condition is met
 * @param established it has shed, takes its food by itself and has gained
 * @param expected when its age, its sheds and its meals will be as asked for; a day that has passed: since when they are.
 *     Absent when its birth is not known, or it died
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record LeavingView(
        String animal,
        LocalDate on,
        boolean ready,
        boolean established,
        List<LeavingCondition> conditions,
        @Nullable LeavingWindow expected) {}
