package org.demebook.sheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.demebook.notation.RoughDate;
import org.demebook.notation.SourceCode;
import org.demebook.registry.AnimalView;
import org.demebook.registry.LocalityClaim;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.sheet.SheetAnimal.Relative;
import org.jspecify.annotations.Nullable;

/**
 * Compares a row with the animal that is registered already. A row that says less than the register, or the same less
 * precisely, agrees with it; whatever it says otherwise or beyond that is told, since an import changes no animal.
 */
final class KnownRow {
    private static final List<Column> ONLY_FOR_ITS_HOLDER = List.of(
            Column.REFERENCE,
            Column.DIED,
            Column.SOURCE,
            Column.COLLECTION,
            Column.TRANSPONDERS,
            Column.MARKS,
            Column.NOTES);

    private final SheetAnimal animal;
    private final AnimalView view;
    private final Findings findings;

    private KnownRow(SheetAnimal animal, AnimalView view, Findings findings) {
        this.animal = animal;
        this.view = view;
        this.findings = findings;
    }

    /** Tells what an animal's row says otherwise; true when there is nothing. */
    static boolean agrees(SheetAnimal animal, AnimalView view, Findings findings) {
        return new KnownRow(animal, view, findings).agrees();
    }

    private boolean agrees() {
        var row = animal.stated;
        var agrees =
                agrees(Column.SEX, said(row.sexOrUnknown().word()), view.sex().word());
        agrees &= dateAgrees(Column.BORN, row.born(), view.born());
        agrees &= agrees(
                Column.ORIGIN, said(row.originOrUnknown().word()), view.origin().word());
        agrees &= localityAgrees(row.locality(), view.locality());
        agrees &= damAgrees();
        agrees &= sireAgrees();
        var held = view.held();
        return held == null ? agrees & saysNothingHidden() : agrees & heldAgrees(held);
    }

    private boolean localityAgrees(@Nullable LocalityClaim stated, @Nullable LocalityClaim registered) {
        return stated == null
                || agrees(
                                Column.LOCALITY,
                                stated.locality(),
                                registered == null || registered.locality() == null
                                        ? null
                                        : asSheet(registered.locality()))
                        & agrees(
                                Column.LOCALITY_CERTAINTY,
                                stated.certainty().word(),
                                registered == null
                                        ? null
                                        : registered.certainty().word());
    }

    private boolean heldAgrees(AnimalView.Held held) {
        var row = animal.stated;
        var agrees = dateAgrees(Column.DIED, row.died(), held.died());
        agrees &= agrees(Column.SOURCE, letter(row.source()), letter(held.sourceCode()));
        agrees &= agrees(Column.NOTES, row.notes(), held.notes() == null ? null : asSheet(held.notes()));
        agrees &= row.collectionLabel().isEmpty()
                || row.collection() != null
                        && (row.collection().equals(held.collection())
                                || row.collection().equals(held.owner()))
                || tell(Column.COLLECTION, row.collectionLabel(), "the register has it in another collection");
        agrees &= identifiersAgree(Column.REFERENCE, "own-reference", list(row.reference()), held);
        agrees &= identifiersAgree(
                Column.TRANSPONDERS,
                "transponder",
                row.transponders().stream().map(code -> code.code()).toList(),
                held);
        agrees &= identifiersAgree(Column.MARKS, "mark", row.marks(), held);
        return agrees;
    }

    private static @Nullable String said(String word) {
        return word.equals("unknown") ? null : word;
    }

    private static @Nullable String letter(@Nullable SourceCode source) {
        return source == null ? null : source.letter();
    }

    /** A text of the register as it would come back from a sheet. */
    private static String asSheet(String text) {
        return Cells.read(Cells.write(text));
    }

    private static List<String> list(@Nullable String value) {
        return value == null ? List.of() : List.of(value);
    }

    private boolean identifiersAgree(Column column, String kind, List<String> stated, AnimalView.Held held) {
        var registered = held.identifiers().stream()
                .filter(identifier -> identifier.kind().equals(kind))
                .map(identifier -> asSheet(identifier.value()))
                .toList();
        var unknown =
                stated.stream().filter(value -> !registered.contains(value)).toList();
        return unknown.isEmpty()
                || tell(
                        column,
                        String.join("; ", unknown),
                        registered.isEmpty()
                                ? "the register has none"
                                : "the register has " + String.join("; ", registered));
    }

    /** What only its holder may see of an animal is not compared, so that nobody learns it by guessing. */
    private boolean saysNothingHidden() {
        var row = animal.stated;
        var agrees = true;
        for (var column : ONLY_FOR_ITS_HOLDER) {
            Object stated =
                    switch (column) {
                        case REFERENCE -> row.reference();
                        case DIED -> row.died();
                        case SOURCE -> row.source();
                        case TRANSPONDERS -> row.transponders().isEmpty() ? null : row.transponders();
                        case MARKS -> row.marks().isEmpty() ? null : row.marks();
                        case NOTES -> row.notes();
                        case COLLECTION -> row.collectionLabel().isEmpty() ? null : row.collectionLabel();
                        default -> null;
                    };
            if (stated != null) {
                agrees = false;
                findings.error(
                        animal.row(),
                        column,
                        stated,
                        "%s is not in a collection of yours; only who holds it says this of it. Leave the cell empty."
                                .formatted(view.number()));
            }
        }
        return agrees;
    }

    private boolean damAgrees() {
        var dam = animal.dam;
        return dam == null
                || dam.number() != null && dam.number().equals(view.dam())
                || tell(
                        Column.DAM,
                        dam.kin().label(),
                        view.dam() == null ? "the register knows of no dam" : "the register has " + view.dam());
    }

    private boolean sireAgrees() {
        var stated = animal.stated.sire();
        if (stated == null || animal.parentMissing) {
            return true;
        }
        // a list that knows of no doubt does not deny it
        boolean doubtAgrees = !stated.inDoubt() || view.sire().inDoubt();
        return doubtAgrees && form(stated, animal.sires).equals(form(view.sire()))
                || tell(
                        Column.SIRE,
                        stated.kind().equals("none")
                                ? "no sire"
                                : (stated.inDoubt() ? "doubtful " : "") + String.join("|", ParentFinder.names(stated)),
                        view.sire().kind().equals("unknown")
                                ? "the register knows of no sire"
                                : "the register has " + SireText.of(view.sire()));
    }

    /** A sire such that two that say the same are equal. */
    private record Form(
            String kind,
            List<String> males,
            boolean wholeLitter,
            @Nullable String fusion,
            @Nullable BigDecimal secondDivision) {}

    private static Form form(StatedSire stated, List<Relative> males) {
        var numbers = males.stream().map(male -> String.valueOf(male.number())).toList();
        return form(stated, numbers, stated.candidates());
    }

    private static Form form(StatedSire registered) {
        return form(registered, ParentFinder.names(registered), registered.candidates());
    }

    private static Form form(StatedSire sire, List<String> numbers, @Nullable List<StatedCandidate> candidates) {
        var males = new ArrayList<String>();
        for (int i = 0; i < numbers.size(); i++) {
            males.add(
                    candidates == null
                            ? numbers.get(i)
                            : numbers.get(i) + ":"
                                    + candidates
                                            .get(i)
                                            .probability()
                                            .stripTrailingZeros()
                                            .toPlainString());
        }
        Collections.sort(males);
        return new Form(
                sire.kind(),
                males,
                Boolean.TRUE.equals(sire.wholeLitter()),
                sire.fusion(),
                sire.secondDivision() == null ? null : sire.secondDivision().stripTrailingZeros());
    }

    private boolean dateAgrees(Column column, @Nullable RoughDate stated, @Nullable RoughDate registered) {
        return stated == null
                || registered != null && encloses(stated, registered)
                || tell(column, stated, registered == null ? nothing(column) : "the register has " + registered);
    }

    private static String nothing(Column column) {
        return column == Column.DIED ? "the register has it alive" : "the register knows no date";
    }

    private static boolean encloses(RoughDate stated, RoughDate registered) {
        var from = stated.earliest();
        var to = stated.latest();
        return (from == null
                        || registered.earliest() != null
                                && !registered.earliest().isBefore(from))
                && (to == null
                        || registered.latest() != null && !registered.latest().isAfter(to));
    }

    private boolean agrees(Column column, @Nullable String stated, @Nullable String registered) {
        return stated == null
                || stated.equals(registered)
                || tell(
                        column,
                        stated,
                        registered == null ? "the register has nothing there" : "the register has " + registered);
    }

    /** Always false: for the end of a condition. */
    private boolean tell(Column column, Object stated, String registered) {
        var called = animal.stated.label().equals(view.number())
                ? view.number()
                : "%s (%s)".formatted(animal.stated.label(), view.number());
        findings.error(
                animal.row(),
                column,
                stated,
                "%s is registered already: this row says %s, %s. Correct it in the register if the row is right; an import changes no animal."
                        .formatted(called, stated, registered));
        return false;
    }
}
