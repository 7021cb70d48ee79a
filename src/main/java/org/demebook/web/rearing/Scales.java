package org.demebook.web.rearing;

import static org.demebook.problem.ProblemType.INVALID_VALUES;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.demebook.diary.CareRecordView;
import org.demebook.diary.CareRecords;
import org.demebook.diary.StatedCareRecord;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;

/** Reads a form with a mass for each of many animals; those without one were not on the scales. */
@ApplicationScoped
class Scales {
    private static final Pattern RECORD = Pattern.compile("^records\\[(\\d+)]");

    @Inject
    Forms forms;

    @Inject
    Pages pages;

    @Inject
    CareRecords careRecords;

    /** Writes all of them down, or nothing: each finding stands at the field that it is about. */
    List<CareRecordView> weighed(Standing by, Typed typed) {
        var records = new ArrayList<StatedCareRecord>();
        var places = new ArrayList<Integer>();
        var findings = new ArrayList<Finding>();
        for (int i = 0; i < CareRecords.MOST && typed.text(field(i, "animal")) != null; i++) {
            RecordForm.withPoint(typed, field(i, "mass.value"));
            if (typed.text(field(i, "mass.value")) != null) {
                try {
                    records.add(forms.read(one(typed, i), StatedCareRecord.class));
                    places.add(i);
                } catch (Refusal refusal) {
                    var part = "records[%d]".formatted(i);
                    refusal.findings().forEach(finding -> findings.add(finding.within(part)));
                }
            }
        }
        if (!findings.isEmpty()) {
            throw new Refusal(INVALID_VALUES, words().lookAtMasses(), findings);
        }
        if (records.isEmpty()) {
            throw new Refusal(
                    INVALID_VALUES,
                    words().noMass(),
                    List.of(Finding.error(field(0, "mass.value"), null, words().noMass())));
        }
        try {
            return careRecords.recordAll(by, records).records();
        } catch (Refusal refusal) {
            var told = refusal.findings().stream()
                    .map(finding -> at(finding, places))
                    .toList();
            throw new Refusal(refusal.type(), refusal.detail(), told);
        }
    }

    /** One of the masses, with the day and the unit that stand once on the page. */
    private static Typed one(Typed typed, int i) {
        return Typed.nothing()
                .with("animal", typed.text(field(i, "animal")))
                .with("kind", RecordKind.MEASURES.word())
                .with("on", typed.text("on"))
                .with("mass.value", typed.text(field(i, "mass.value")))
                .with("mass.unit", typed.text("unit"));
    }

    /** The same finding at the place that the record has in the form. */
    private static Finding at(Finding finding, List<Integer> places) {
        var field = finding.field();
        var record = RECORD.matcher(field == null ? "" : field);
        if (field == null || !record.find()) {
            return finding;
        }
        var there = Matcher.quoteReplacement("records[%d]".formatted(places.get(Integer.parseInt(record.group(1)))));
        var moved = record.replaceFirst(there);
        return new Finding(
                finding.level(),
                finding.rule(),
                moved.endsWith(".mass") ? moved + ".value" : moved,
                finding.value(),
                finding.message(),
                finding.why(),
                finding.likelier());
    }

    private static String field(int i, String name) {
        return "records[%d].%s".formatted(i, name);
    }

    private RearingMessages words() {
        return pages.words(RearingMessages.class);
    }
}
