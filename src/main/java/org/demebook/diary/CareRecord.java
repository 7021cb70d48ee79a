package org.demebook.diary;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.JsonTypeName;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.demebook.journal.Words;
import org.demebook.notation.Length;
import org.demebook.notation.Mass;
import org.jspecify.annotations.Nullable;

/** Something that happened to an animal in somebody's care, on the day as they know it. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(CareRecord.Shed.class),
    @JsonSubTypes.Type(CareRecord.Meal.class),
    @JsonSubTypes.Type(CareRecord.Measures.class),
    @JsonSubTypes.Type(CareRecord.Move.class),
    @JsonSubTypes.Type(CareRecord.HealthNote.class),
    @JsonSubTypes.Type(CareRecord.HealthTest.class),
    @JsonSubTypes.Type(CareRecord.Quarantine.class)
})
public sealed interface CareRecord {
    List<String> KINDS = List.of("shed", "meal", "measures", "move", "health-note", "test", "quarantine");

    /** The kinds that whoever holds the animal later sees too; the others tell of the collection, not of the animal. */
    List<String> KINDS_THAT_GO_ALONG = List.of("shed", "meal", "measures", "test");

    LocalDate on();

    default String kind() {
        return getClass().getAnnotation(JsonTypeName.class).value();
    }

    /** @param complete whether the skin came off whole; null when nobody looked */
    @JsonTypeName("shed")
    record Shed(LocalDate on, @Nullable Boolean complete) implements CareRecord {}

    /** A meal that was offered. */
    @JsonTypeName("meal")
    record Meal(
            LocalDate on,
            Outcome outcome,
            @Words @Nullable String prey,
            @Nullable Mass preyMass) implements CareRecord {
        public enum Outcome {
            /** Without help. */
            TAKEN,
            /** With help: teased, scented, or fed by hand. */
            ASSISTED,
            REFUSED;

            @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
            static Outcome parse(String text) {
                return named(Outcome.class, text, "A meal is taken, assisted or refused");
            }

            @JsonValue
            String word() {
                return name().toLowerCase(Locale.ROOT);
            }
        }
    }

    /** At least one of mass and length. */
    @JsonTypeName("measures")
    record Measures(
            LocalDate on, @Nullable Mass mass, @Nullable Length length, Length.@Nullable Kind lengthKind)
            implements CareRecord {}

    /** @param place what its keeper calls the tub, the rack or the room */
    @JsonTypeName("move")
    record Move(LocalDate on, @Words(required = true) String place) implements CareRecord {}

    /** @param endedOn since when it is no concern any more; null while it is open */
    @JsonTypeName("health-note")
    record HealthNote(
            LocalDate on,
            @Words(required = true) String text,
            @Nullable LocalDate endedOn) implements CareRecord {}

    /** @param validUntil as the laboratory or the keeper says; null when nobody said */
    @JsonTypeName("test")
    record HealthTest(
            LocalDate sampledOn,
            @Words(required = true) String agent,
            @Words @Nullable String method,
            @Words @Nullable String sample,
            Result result,
            @Words @Nullable String laboratoryReference,
            @Nullable LocalDate validUntil)
            implements CareRecord {
        public enum Result {
            NEGATIVE,
            POSITIVE,
            UNCLEAR;

            @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
            static Result parse(String text) {
                return named(Result.class, text, "A test is negative, positive or unclear");
            }

            @JsonValue
            String word() {
                return name().toLowerCase(Locale.ROOT);
            }
        }

        @Override
        public LocalDate on() {
            return sampledOn;
        }
    }

    /**
     * @param until as it is planned; null: as long as the profile says
     * @param endedOn when it was over; null while it goes on
     */
    @JsonTypeName("quarantine")
    record Quarantine(
            LocalDate from,
            @Nullable LocalDate until,
            @Nullable LocalDate endedOn) implements CareRecord {
        @Override
        public LocalDate on() {
            return from;
        }
    }

    private static <E extends Enum<E>> E named(Class<E> type, String text, String expected) {
        for (var constant : type.getEnumConstants()) {
            if (constant.name().toLowerCase(Locale.ROOT).equals(text)) {
                return constant;
            }
        }
        throw new IllegalArgumentException(expected);
    }
}
