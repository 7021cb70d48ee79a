package org.demebook.web.rearing;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import org.demebook.diary.CareRecord;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Meal.Outcome;
import org.demebook.diary.CareRecord.Shed;
import org.demebook.diary.StatedCareRecord;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/** What one tap at the rack writes down of an animal, of today. */
public enum Tap {
    ATE(Outcome.TAKEN),
    ASSISTED(Outcome.ASSISTED),
    REFUSED(Outcome.REFUSED),
    SHED(null);

    private final @Nullable Outcome outcome;

    Tap(@Nullable Outcome outcome) {
        this.outcome = outcome;
    }

    /** As a button sends it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Tap of(@Nullable String word) {
        return Arrays.stream(values())
                .filter(tap -> tap.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new Refusal(BAD_PARAMETER, "A form of this server has no such button."));
    }

    /** Whether somebody wrote the same kind down on the same day already. */
    boolean isIn(CareRecord record, LocalDate day) {
        return record.on().equals(day) && (outcome == null ? record instanceof Shed : record instanceof Meal);
    }

    StatedCareRecord of(String animal, LocalDate day) {
        return new StatedCareRecord(
                animal,
                outcome == null ? "shed" : "meal",
                day,
                null,
                outcome,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }
}
