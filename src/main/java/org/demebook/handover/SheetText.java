package org.demebook.handover;

import java.util.ArrayList;
import java.util.List;
import org.demebook.handover.HandoverSheet.Meal;
import org.demebook.handover.HandoverSheet.Note;
import org.demebook.handover.HandoverSheet.Rearing;
import org.demebook.handover.HandoverSheet.Shed;
import org.demebook.handover.HandoverSheet.Test;
import org.demebook.paper.QrCode;
import org.jspecify.annotations.Nullable;

/**
 * A sheet as it is printed: rows of words.
 *
 * @param banner how it stands, where it is not what the register says today
 * @param claimCode for a buyer without an account
 * @param claimLink where the buyer types it
 */
public record SheetText(
        String number,
        String description,
        @Nullable String banner,
        String issuedOn,
        List<Row> animal,
        List<Row> figures,
        List<Row> rearing,
        List<Row> meals,
        List<Note> notes,
        @Nullable String claimCode,
        String claimLink,
        String code,
        String link,
        String digest,
        QrCode qr) {

    private static final int MOST_CHARACTERS = 60;

    public record Row(String label, String value) {}

    static SheetText of(HandoverSheet sheet, HandoverSheetView view, @Nullable String claimCode, String claimLink) {
        var number = sheet.identity().number();
        var issuedOn = InWords.day(sheet.issuedOn());
        return new SheetText(
                number,
                "Hand-over sheet of %s, %s, issued on %s"
                        .formatted(number, sheet.identity().taxon(), issuedOn),
                view.state() == SheetState.CURRENT ? null : view.state().inWords(),
                issuedOn,
                animal(sheet),
                figures(sheet.figures()),
                rearing(sheet.rearing()),
                sheet.rearing().meals().stream().map(SheetText::meal).toList(),
                sheet.notes(),
                claimCode,
                claimLink,
                view.code(),
                view.link(),
                view.digest(),
                QrCode.of(view.link()));
    }

    private static List<Row> animal(HandoverSheet sheet) {
        var identity = sheet.identity();
        var rows = new ArrayList<>(List.of(
                new Row("Taxon", identity.taxon()),
                new Row("Locality, as claimed", identity.locality()),
                new Row("Born", InWords.born(identity.born())),
                new Row("Sex", InWords.sex(identity.sex())),
                new Row("Dam", InWords.dam(identity.dam())),
                new Row("Sire", InWords.sire(identity.sire()))));
        sheet.marks()
                .forEach(mark ->
                        rows.add(new Row(mark.kind().equals("transponder") ? "Transponder" : "Mark", mark.value())));
        rows.add(new Row("Given by", sheet.givenBy()));
        rows.add(new Row("Ownership", Advice.ownership(sheet.kind())));
        rows.add(new Row(
                "Source",
                (sheet.source().recorded() == null
                                ? ""
                                : "on its keeper's record %s (%s), unchecked. "
                                        .formatted(
                                                sheet.source().recorded().letter(),
                                                sheet.source().recorded().meaning()))
                        + sheet.source().hint()));
        return rows;
    }

    private static List<Row> figures(HandoverSheet.Figures figures) {
        var bySire = figures.inbreedingBySire();
        return List.of(
                new Row(
                        "Inbreeding coefficient",
                        InWords.coefficient(figures.inbreedingCoefficient())
                                + (bySire == null
                                        ? ""
                                        : ", by the sire %s to %s"
                                                .formatted(
                                                        InWords.coefficient(bySire.lowest()),
                                                        InWords.coefficient(bySire.highest())))),
                new Row("Known ancestry", InWords.percent(figures.knownAncestry())),
                new Row(
                        "Founders",
                        InWords.list(
                                figures.founders().stream()
                                        .map(founder ->
                                                founder.animal() + " " + InWords.percent(founder.contribution()))
                                        .toList(),
                                "none known")));
    }

    private static List<Row> rearing(Rearing rearing) {
        var rows = new ArrayList<>(List.of(
                new Row(
                        "State",
                        rearing.established()
                                ? "established"
                                : "not established: " + String.join(" ", rearing.notEstablished())),
                new Row("First measures", InWords.measures(rearing.firstMeasures())),
                new Row("Latest measures", InWords.measures(rearing.lastMeasures())),
                new Row(
                        "Sheds",
                        InWords.list(
                                rearing.sheds().stream().map(SheetText::shed).toList(), "none on record")),
                new Row("Meals without help", "%d in a row".formatted(rearing.mealsInARow())),
                new Row(
                        "Tests",
                        InWords.list(
                                rearing.tests().stream().map(SheetText::test).toList(), "none on record"))));
        if (!rearing.openConditions().isEmpty()) {
            rows.add(1, new Row("Not ready to go", String.join(" ", rearing.openConditions())));
        }
        return rows;
    }

    private static String shed(Shed shed) {
        return InWords.day(shed.on())
                + (shed.complete() == null ? "" : shed.complete() ? ", complete" : ", not complete");
    }

    private static String test(Test test) {
        var words = new StringBuilder(brief(test.agent()) + ": " + test.result());
        if (test.method() != null) {
            words.append(", ").append(brief(test.method()));
        }
        if (test.sample() != null) {
            words.append(", ").append(brief(test.sample()));
        }
        return words + ", sampled on " + InWords.day(test.sampledOn());
    }

    private static Row meal(Meal meal) {
        return new Row(InWords.day(meal.on()), meal.outcome() + (meal.prey() == null ? "" : ", " + brief(meal.prey())));
    }

    /** Free words of records, of which there are many on two pages of paper; the sheet's own words have them whole. */
    private static String brief(String words) {
        return words.length() <= MOST_CHARACTERS ? words : words.substring(0, MOST_CHARACTERS - 1) + "…";
    }
}
