package org.demebook.diary;

import static org.demebook.problem.ProblemType.INVALID_VALUES;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.demebook.diary.CareRecord.HealthNote;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Measures;
import org.demebook.diary.CareRecord.Move;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.diary.CareRecord.Shed;
import org.demebook.notation.Length;
import org.demebook.notation.Mass;
import org.demebook.notation.StatedMass;
import org.demebook.notation.Words;
import org.demebook.registry.Breach;
import org.jspecify.annotations.Nullable;

/** Turns what was sent into a record of its kind, or says what is missing and what does not belong there. */
final class CareRecordReader {
    private record Fields(Set<String> needed, Set<String> possible) {}

    private static final Map<String, Fields> FIELDS_OF_KIND = Map.of(
            "shed", new Fields(Set.of("on"), Set.of("complete")),
            "meal", new Fields(Set.of("on", "outcome"), Set.of("prey", "preyMass")),
            "measures", new Fields(Set.of("on"), Set.of("mass", "length", "lengthKind")),
            "move", new Fields(Set.of("on", "place"), Set.of()),
            "health-note", new Fields(Set.of("on", "text"), Set.of("endedOn")),
            "test",
                    new Fields(
                            Set.of("sampledOn", "agent", "result"),
                            Set.of("method", "sample", "laboratoryReference", "validUntil")),
            "quarantine", new Fields(Set.of("from"), Set.of("until", "endedOn")));

    private final StatedCareRecord stated;
    private final List<Breach> breaches = new ArrayList<>();

    private CareRecordReader(StatedCareRecord stated) {
        this.stated = stated;
    }

    /** Empty when something is wrong, which is then among the breaches. */
    static Optional<CareRecord> read(StatedCareRecord stated, List<Breach> breaches) {
        var reader = new CareRecordReader(stated);
        reader.checkFields();
        var record = reader.breaches.isEmpty() ? reader.record() : null;
        breaches.addAll(reader.breaches);
        return reader.breaches.isEmpty() ? Optional.ofNullable(record) : Optional.empty();
    }

    private void checkFields() {
        var fields = Objects.requireNonNull(FIELDS_OF_KIND.get(stated.kind()));
        values().forEach((name, value) -> {
            var there = value != null && !(value instanceof String text && text.isBlank());
            if (!there && fields.needed.contains(name)) {
                refuse(name, null, "A %s needs %s.".formatted(stated.kind(), name));
            } else if (there && !fields.needed.contains(name) && !fields.possible.contains(name)) {
                refuse(name, value, "A %s has no %s; leave it out.".formatted(stated.kind(), name));
            }
        });
    }

    private Map<String, @Nullable Object> values() {
        var values = new LinkedHashMap<String, @Nullable Object>();
        values.put("on", stated.on());
        values.put("complete", stated.complete());
        values.put("outcome", stated.outcome());
        values.put("prey", stated.prey());
        values.put("preyMass", stated.preyMass());
        values.put("mass", stated.mass());
        values.put("length", stated.length());
        values.put("lengthKind", stated.lengthKind());
        values.put("place", stated.place());
        values.put("text", stated.text());
        values.put("agent", stated.agent());
        values.put("method", stated.method());
        values.put("sample", stated.sample());
        values.put("sampledOn", stated.sampledOn());
        values.put("result", stated.result());
        values.put("laboratoryReference", stated.laboratoryReference());
        values.put("validUntil", stated.validUntil());
        values.put("from", stated.from());
        values.put("until", stated.until());
        values.put("endedOn", stated.endedOn());
        return values;
    }

    // what is needed was looked for before
    private CareRecord record() {
        return switch (stated.kind()) {
            case "shed" -> new Shed(stated.on(), stated.complete());
            case "meal" ->
                new Meal(
                        stated.on(),
                        stated.outcome(),
                        Words.orNull(stated.prey()),
                        mass("preyMass", stated.preyMass()));
            case "measures" -> measures();
            case "move" -> new Move(stated.on(), stated.place().strip());
            case "health-note" -> {
                requireNotBefore("endedOn", stated.endedOn(), stated.on());
                yield new HealthNote(stated.on(), stated.text().strip(), stated.endedOn());
            }
            case "test" -> {
                requireNotBefore("validUntil", stated.validUntil(), stated.sampledOn());
                yield new HealthTest(
                        stated.sampledOn(),
                        stated.agent().strip(),
                        Words.orNull(stated.method()),
                        Words.orNull(stated.sample()),
                        stated.result(),
                        Words.orNull(stated.laboratoryReference()),
                        stated.validUntil());
            }
            default -> {
                requireNotBefore("until", stated.until(), stated.from());
                requireNotBefore("endedOn", stated.endedOn(), stated.from());
                yield new Quarantine(stated.from(), stated.until(), stated.endedOn());
            }
        };
    }

    private CareRecord measures() {
        if (stated.mass() == null && stated.length() == null) {
            refuse("mass", null, "Measures need a mass, a length, or both.");
        }
        if (stated.lengthKind() != null && stated.length() == null) {
            refuse("lengthKind", stated.lengthKind(), "Say the length, or leave its kind out.");
        }
        var length = stated.length() == null ? null : stated.length().length();
        var kind = length == null ? null : Objects.requireNonNullElse(stated.lengthKind(), Length.Kind.SNOUT_VENT);
        return new Measures(stated.on(), mass("mass", stated.mass()), length, kind);
    }

    private @Nullable Mass mass(String field, @Nullable StatedMass mass) {
        if (mass != null && mass.beyondAll()) {
            refuse(field, mass.value() + " " + mass.unit(), "No snake and no meal weighs so much; check the unit.");
            return null;
        }
        return mass == null ? null : mass.mass();
    }

    private void requireNotBefore(String field, @Nullable LocalDate day, @Nullable LocalDate first) {
        if (day != null && first != null && day.isBefore(first)) {
            refuse(field, day, "%s is before %s; one of the two days is wrong.".formatted(day, first));
        }
    }

    private void refuse(String field, @Nullable Object value, String message) {
        breaches.add(Breach.error(INVALID_VALUES, field, value, message));
    }
}
