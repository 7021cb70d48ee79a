package org.demebook.rearing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.Diary;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * The latest test of an animal for one agent, as one looks at it before a pairing.
 *
 * @param agent as it was written last
 * @param countsUntil the last day on which it counts: what the record says, or 180 days from the sample (common practice,
 *     no source)
 * @param counts whether it still counts on the day that was asked for, whatever its result
 * @param negativesInARow how many of the last ones were negative, one after the other: some agents need several
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record CountedTest(
        String agent,
        LocalDate sampledOn,

        @Schema(
                implementation = String.class,
                enumeration = {"negative", "positive", "unclear"})
        HealthTest.Result result,

        @Nullable String method,
        @Nullable String sample,
        LocalDate countsUntil,
        boolean counts,
        int negativesInARow) {
    static final int DAYS_THAT_A_TEST_COUNTS = 180;

    /** The latest by agent, in the order of agents; agents that differ in upper and lower case alone are one. */
    static List<CountedTest> of(Diary diary, LocalDate today) {
        var byAgent = new TreeMap<String, List<HealthTest>>();
        for (var test : diary.until(today).tests()) {
            byAgent.computeIfAbsent(key(test.agent()), agent -> new ArrayList<>())
                    .add(test);
        }
        return byAgent.values().stream().map(tests -> latest(tests, today)).toList();
    }

    static String key(String agent) {
        return agent.strip().toLowerCase(Locale.ROOT);
    }

    private static CountedTest latest(List<HealthTest> tests, LocalDate today) {
        var last = tests.get(tests.size() - 1);
        int negatives = 0;
        for (var test : tests) {
            negatives = test.result() == HealthTest.Result.NEGATIVE ? negatives + 1 : 0;
        }
        var until = last.validUntil() == null ? last.sampledOn().plusDays(DAYS_THAT_A_TEST_COUNTS) : last.validUntil();
        return new CountedTest(
                last.agent(),
                last.sampledOn(),
                last.result(),
                last.method(),
                last.sample(),
                until,
                !until.isBefore(today),
                negatives);
    }
}
