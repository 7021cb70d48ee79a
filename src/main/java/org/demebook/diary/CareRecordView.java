package org.demebook.diary;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.diary.CareRecord.HealthNote;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Measures;
import org.demebook.diary.CareRecord.Move;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.diary.CareRecord.Shed;
import org.demebook.notation.Length;
import org.demebook.notation.Mass;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A care record: its kind, and the fields of that kind as they were sent.
 *
 * @param animal studbook number
 * @param day of whatever kind it is, the day that the list is ordered by
 * @param yours written for a collection that you act for; only then you may correct or withdraw it
 * @param withdrawn entered by mistake; left out of lists and of everything that is computed
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record CareRecordView(
        UUID id,
        String animal,
        String kind,
        LocalDate day,
        boolean yours,
        boolean withdrawn,
        long revision,
        @Nullable LocalDate on,
        @Nullable Boolean complete,
        @Schema(implementation = String.class) Meal.@Nullable Outcome outcome,
        @Nullable String prey,
        @Nullable Weighed preyMass,
        @Nullable Weighed mass,
        @Nullable Measured length,
        @Schema(implementation = String.class) Length.@Nullable Kind lengthKind,
        @Nullable String place,

        @Schema(
                description =
                        "What was seen; no diagnosis: with any sign of illness see a reptile veterinarian. Reptiles may"
                                + " carry Salmonella: wash your hands.")
        @Nullable
        String text,

        @Nullable String agent,
        @Nullable String method,
        @Nullable String sample,
        @Nullable LocalDate sampledOn,
        @Schema(implementation = String.class) HealthTest.@Nullable Result result,
        @Nullable String laboratoryReference,
        @Nullable LocalDate validUntil,
        @Nullable LocalDate from,
        @Nullable LocalDate until,
        @Nullable LocalDate endedOn) {

    /** @param written value and unit as they were sent */
    public record Weighed(BigDecimal grams, String written) {
        static @Nullable Weighed of(@Nullable Mass mass) {
            return mass == null ? null : new Weighed(mass.grams(), mass.written());
        }
    }

    /** @param written value and unit as they were sent */
    public record Measured(int millimetres, String written) {
        static @Nullable Measured of(@Nullable Length length) {
            return length == null ? null : new Measured(length.millimetres(), length.written());
        }
    }

    static CareRecordView of(
            UUID id, String animal, CareRecord record, boolean yours, boolean withdrawn, long revision) {
        return new CareRecordView(
                id,
                animal,
                record.kind(),
                record.on(),
                yours,
                withdrawn,
                revision,
                record instanceof HealthTest || record instanceof Quarantine ? null : record.on(),
                of(record, Shed.class, Shed::complete),
                of(record, Meal.class, Meal::outcome),
                of(record, Meal.class, Meal::prey),
                of(record, Meal.class, meal -> Weighed.of(meal.preyMass())),
                of(record, Measures.class, measures -> Weighed.of(measures.mass())),
                of(record, Measures.class, measures -> Measured.of(measures.length())),
                of(record, Measures.class, Measures::lengthKind),
                of(record, Move.class, Move::place),
                of(record, HealthNote.class, HealthNote::text),
                of(record, HealthTest.class, HealthTest::agent),
                of(record, HealthTest.class, HealthTest::method),
                of(record, HealthTest.class, HealthTest::sample),
                of(record, HealthTest.class, HealthTest::sampledOn),
                of(record, HealthTest.class, HealthTest::result),
                of(record, HealthTest.class, HealthTest::laboratoryReference),
                of(record, HealthTest.class, HealthTest::validUntil),
                of(record, Quarantine.class, Quarantine::from),
                of(record, Quarantine.class, Quarantine::until),
                record instanceof HealthNote note ? note.endedOn() : of(record, Quarantine.class, Quarantine::endedOn));
    }

    private static <R extends CareRecord, V> @Nullable V of(
            CareRecord record, Class<R> kind, Function<R, @Nullable V> part) {
        return kind.isInstance(record) ? part.apply(kind.cast(record)) : null;
    }
}
