package org.demebook.web.rearing;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.StringJoiner;
import org.demebook.diary.CareRecord.HealthTest.Result;
import org.demebook.diary.CareRecord.Meal.Outcome;
import org.demebook.diary.CareRecordView;
import org.demebook.notation.Length;
import org.demebook.notation.Mass;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** What a care record says, in a line: {@code inject:said} in templates. Quantities stand as they were written. */
@Named("said")
@RequestScoped
public class Said {
    @Inject
    Pages pages;

    @Inject
    Visit visit;

    /** What happened, without the day and the animal. */
    public String what(CareRecordView record) {
        return switch (kind(record)) {
            case MEAL -> meal(record);
            case SHED -> shed(record.complete());
            case MEASURES -> measures(record);
            case MOVE -> Objects.requireNonNullElse(record.place(), "");
            case HEALTH_NOTE -> Objects.requireNonNullElse(record.text(), "");
            case TEST -> test(record);
            case QUARANTINE -> record.until() == null ? "" : words().plannedUntil(visit.day(record.until()));
        };
    }

    /** How long ago a day was. */
    public String ago(int days) {
        return days <= 0 ? words().offeredToday() : days == 1 ? words().yesterday() : words().daysAgo(days);
    }

    /** All kinds, the daily ones first. */
    public List<RecordKind> getKinds() {
        return RecordKind.all();
    }

    public List<String> getMassUnits() {
        return Arrays.stream(Mass.Unit.values()).map(Mass.Unit::word).toList();
    }

    /** The field with the mass of one of many. */
    public String place(int place) {
        return "records[%d].mass.value".formatted(place);
    }

    /** The field of a quantity whose value has a field of its own: findings may be about either. */
    public String quantity(String value) {
        return value.substring(0, value.length() - ".value".length());
    }

    public RecordKind kind(CareRecordView record) {
        return RecordKind.of(record.kind()).orElseThrow();
    }

    /** Whether it goes on. */
    public boolean open(CareRecordView record) {
        return kind(record).ends() && record.endedOn() == null;
    }

    private String meal(CareRecordView record) {
        var said = new StringJoiner(", ").add(outcome(record.outcome()));
        if (record.prey() != null) {
            said.add(record.prey());
        }
        if (record.preyMass() != null) {
            said.add(record.preyMass().written());
        }
        return said.toString();
    }

    private String outcome(@Nullable Outcome outcome) {
        return outcome == Outcome.TAKEN
                ? words().taken()
                : outcome == Outcome.ASSISTED ? words().assisted() : words().refused();
    }

    private String shed(@Nullable Boolean complete) {
        return complete == null ? words().skinNotSaid() : complete ? words().skinWhole() : words().skinInPieces();
    }

    private String measures(CareRecordView record) {
        var said = new StringJoiner(", ");
        if (record.mass() != null) {
            said.add(record.mass().written());
        }
        if (record.length() != null) {
            var from = record.lengthKind() == Length.Kind.TOTAL ? words().total() : words().snoutVent();
            said.add(record.length().written() + " (" + from + ")");
        }
        return said.toString();
    }

    private String test(CareRecordView record) {
        var result = record.result() == Result.NEGATIVE
                ? words().negative()
                : record.result() == Result.POSITIVE ? words().positive() : words().unclear();
        var said = new StringJoiner(", ").add(record.agent() + ": " + result);
        if (record.method() != null) {
            said.add(record.method());
        }
        if (record.sample() != null) {
            said.add(record.sample());
        }
        return said.toString();
    }

    private RearingMessages words() {
        return pages.words(RearingMessages.class);
    }
}
