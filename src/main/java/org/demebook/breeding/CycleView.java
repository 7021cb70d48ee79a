package org.demebook.breeding;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.demebook.gestation.DaySpan;
import org.demebook.gestation.HowKnown;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A female's breeding cycle on a day, and when her young are due.
 *
 * @param female studbook number
 * @param onDay the day that it is told for
 * @param gravid an ovulation or a shed after it was noted, and no litter since
 * @param due the expected day with its windows; absent where no sign tells a day
 * @param months the months that are all that introductions alone can tell; absent where there is something better, or nothing
 * @param reason why it is so, in sentences
 * @param prompts what is to be done now
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record CycleView(
        String female,
        LocalDate onDay,
        Stage stage,
        boolean gravid,
        List<BreedingSignView> signs,
        @Nullable Due due,
        @Nullable Months months,
        String reason,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> prompts) {

    /** How far a cycle has come. */
    public enum Stage {
        NOTHING_NOTED,
        INTRODUCED,
        GRAVID,
        LAID,
        IN_LABOUR,
        LABOUR_FINISHED;

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * When a birth, or of eggs the hatching, is due.
     *
     * @param signId the sign that it is counted from
     * @param expectedDays from that sign
     * @param spreadDays standard deviation of the prediction, in whole days: the expected day, more or less so many
     * @param halfOfBirths a birth falls in these days as often as not
     * @param nineTenthsOfBirths nine of ten births fall in these days
     * @param likely the days to reckon with
     * @param earliestOn from this day on a birth is to be reckoned with
     * @param overdueOn from this day on she is past the likely days
     * @param withoutHistoryOn the expected day if nothing were known of her own earlier litters; absent when nothing is
     * @param reminders three days to be reminded of
     */
    public record Due(
            UUID signId,
            SignKind countedFrom,
            LocalDate countedFromOn,
            HowKnown howKnown,
            LocalDate expectedOn,
            int expectedDays,
            int spreadDays,
            DaySpan halfOfBirths,
            DaySpan nineTenthsOfBirths,
            DaySpan likely,
            LocalDate earliestOn,
            LocalDate overdueOn,
            @Nullable LocalDate withoutHistoryOn,
            List<Reminder> reminders) {}

    /** What to think of from a day on. */
    public record Reminder(LocalDate dueOn, String message) {}

    /**
     * From a first to a last month, such as {@code 2026-05}.
     *
     * @param from written as year and month
     * @param until written as year and month
     */
    public record Months(String from, String until) {}
}
