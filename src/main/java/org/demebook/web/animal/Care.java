package org.demebook.web.animal;

import java.math.BigDecimal;
import java.util.List;
import org.demebook.plot.Growth;
import org.demebook.plot.Trend;
import org.demebook.rearing.CountedTest;
import org.demebook.rearing.LeavingView;
import org.jspecify.annotations.Nullable;

/**
 * What follows from what was written down of its care; for who holds it, or wrote of it.
 *
 * @param leaving null where it is no young any more
 * @param masses along time; null where it was never weighed
 * @param growth by age, beside its littermates; null where it is grown, or its birth is not known to the day
 * @param perWeek grams; null where too little is known
 * @param behind why it is behind its littermates, in sentences
 */
public record Care(
        List<CountedTest> tests,
        @Nullable LeavingView leaving,
        @Nullable Trend masses,
        @Nullable Growth growth,
        @Nullable BigDecimal perWeek,
        List<String> behind) {}
