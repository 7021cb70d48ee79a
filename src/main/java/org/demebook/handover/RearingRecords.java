package org.demebook.handover;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.demebook.diary.CareRecord;
import org.demebook.diary.Diary;
import org.demebook.handover.HandoverSheet.Meal;
import org.demebook.handover.HandoverSheet.Measures;
import org.demebook.handover.HandoverSheet.Rearing;
import org.demebook.handover.HandoverSheet.Shed;
import org.demebook.handover.HandoverSheet.Test;
import org.demebook.rearing.LeavingView;
import org.demebook.rearing.Readiness;
import org.demebook.rearing.Readiness.LeavingCondition;

/** What a sheet says of the care records: those that go with the animal, the latest first; health notes stay behind. */
final class RearingRecords {
    private static final int MOST_MEALS = 10;
    private static final int MOST_SHEDS = 5;
    private static final int MOST_TESTS = 8;

    /** What makes an animal established; the readiness check asks for more. */
    private static final Set<String> OF_THE_ESTABLISHED = Set.of("sheds", "meals", "mass");

    private RearingRecords() {}

    static Rearing of(Diary diary, LeavingView leaving) {
        var measures = diary.measures();
        return new Rearing(
                leaving.established(),
                notMet(leaving, true),
                notMet(leaving, false),
                measures.isEmpty() ? null : measures(measures.get(0)),
                measures.size() < 2 ? null : measures(measures.get(measures.size() - 1)),
                diary.mealsInARow(),
                latest(diary.meals(), MOST_MEALS).stream()
                        .map(meal -> new Meal(meal.on(), word(meal.outcome()), meal.prey()))
                        .toList(),
                latest(diary.sheds(), MOST_SHEDS).stream()
                        .map(shed -> new Shed(shed.on(), shed.complete()))
                        .toList(),
                latest(diary.tests(), MOST_TESTS).stream()
                        .map(test -> new Test(
                                test.sampledOn(), test.agent(), test.method(), test.sample(), word(test.result())))
                        .toList());
    }

    private static List<String> notMet(LeavingView leaving, boolean ofTheEstablished) {
        return leaving.conditions().stream()
                .filter(condition -> condition.state() != Readiness.State.MET)
                .filter(condition -> OF_THE_ESTABLISHED.contains(condition.name()) == ofTheEstablished)
                .map(LeavingCondition::reason)
                .toList();
    }

    private static Measures measures(CareRecord.Measures measures) {
        return new Measures(
                measures.on(),
                measures.mass() == null ? null : measures.mass().grams(),
                measures.length() == null ? null : measures.length().millimetres(),
                measures.lengthKind() == null ? null : measures.lengthKind().word());
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }

    private static <R> List<R> latest(List<R> inOrder, int most) {
        var latest = new ArrayList<>(inOrder.subList(Math.max(0, inOrder.size() - most), inOrder.size()));
        Collections.reverse(latest);
        return latest;
    }
}
