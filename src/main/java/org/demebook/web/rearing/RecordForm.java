package org.demebook.web.rearing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.demebook.diary.CareRecordView;
import org.demebook.diary.StatedCareRecord;
import org.demebook.notation.Length;
import org.demebook.web.Forms;
import org.demebook.web.Preferences;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** The form of a care record: what it offers, what a record says in it, and how it is read. */
@ApplicationScoped
class RecordForm {
    private static final List<String> QUANTITIES = List.of("preyMass", "mass", "length");

    @Inject
    Visit visit;

    @Inject
    Forms forms;

    /** What is offered for a new one. */
    Typed offered(@Nullable String animal, RecordKind kind) {
        var today = visit.getToday();
        var typed = Typed.nothing()
                .with("animal", animal)
                .with("kind", kind.word())
                .with("on", today)
                .with("sampledOn", today)
                .with("from", today);
        return typed.with("preyMass.unit", massUnit())
                .with("mass.unit", massUnit())
                .with("length.unit", lengthUnit());
    }

    private String massUnit() {
        return visit.getPreferences().mass().word();
    }

    private String lengthUnit() {
        return (visit.getPreferences().length() == Preferences.LengthUnit.IN ? Length.Unit.IN : Length.Unit.CM).word();
    }

    /** A record as it would be typed. */
    Typed said(CareRecordView record) {
        var typed = offered(record.animal(), RecordKind.of(record.kind()).orElseThrow())
                .with("revision", record.revision())
                .with("on", record.on())
                .with("complete", record.complete())
                .with("prey", record.prey())
                .with("place", record.place())
                .with("text", record.text())
                .with("agent", record.agent())
                .with("method", record.method())
                .with("sample", record.sample())
                .with("sampledOn", record.sampledOn())
                .with("laboratoryReference", record.laboratoryReference())
                .with("validUntil", record.validUntil())
                .with("from", record.from())
                .with("until", record.until())
                .with("endedOn", record.endedOn());
        if (record.outcome() != null) {
            typed.with("outcome", record.outcome().name().toLowerCase(Locale.ROOT));
        }
        if (record.result() != null) {
            typed.with("result", record.result().name().toLowerCase(Locale.ROOT));
        }
        if (record.lengthKind() != null) {
            typed.with("lengthKind", record.lengthKind().word());
        }
        if (record.preyMass() != null) {
            quantity(typed, "preyMass", record.preyMass().written());
        }
        if (record.mass() != null) {
            quantity(typed, "mass", record.mass().written());
        }
        if (record.length() != null) {
            quantity(typed, "length", record.length().written());
        }
        return typed;
    }

    private static void quantity(Typed typed, String field, String written) {
        int space = written.lastIndexOf(' ');
        typed.with(field + ".value", written.substring(0, space));
        typed.with(field + ".unit", written.substring(space + 1));
    }

    /** The record that was typed; refuses as the API does, and what cannot be read at its field. */
    StatedCareRecord read(Typed typed) {
        var except = new ArrayList<>(List.of("revision", "back"));
        for (var quantity : QUANTITIES) {
            withPoint(typed, quantity + ".value");
            if (typed.text(quantity + ".value") == null) {
                except.add(quantity + ".unit");
            }
        }
        if (typed.text("length.value") == null) {
            except.add("lengthKind");
        }
        return forms.read(typed, StatedCareRecord.class, except.toArray(String[]::new));
    }

    /** A number with a comma, as it is written in many places, as the API reads it. */
    static void withPoint(Typed typed, String field) {
        var text = typed.text(field);
        if (text != null && text.matches("\\d+,\\d+")) {
            typed.with(field, text.replace(',', '.'));
        }
    }
}
