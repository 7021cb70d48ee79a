package org.demebook.sheet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.StudbookNumber;
import org.demebook.problem.LeftAsIs;
import org.demebook.registry.Animals;
import org.demebook.registry.KnownAnimals;
import org.demebook.registry.KnownAnimals.KnownAnimal;
import org.demebook.registry.ParentageRules;
import org.demebook.registry.Populations;
import org.jspecify.annotations.Nullable;

/** Checks a whole sheet against itself and against the register: a few short reads, then arithmetic. */
@ApplicationScoped
class Checks {
    /** No studbook counts that far; one digit too many would use up the serials behind it. */
    private static final long HIGHEST_SERIAL_KEPT = 99_999_999;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Populations populations;

    @Inject
    Clock clock;

    /** @param leave what is left as it is in the whole sheet */
    Plan check(Standing by, Sheet sheet, List<LeftAsIs> leave) {
        var findings = new Findings();
        var layout = Layout.of(sheet.header(), findings);
        if (findings.hasErrors()) {
            return new Plan(findings.report(sheet.lines().size(), 0, 0), List.of(), List.of(), List.of());
        }
        var collections = keepers.collections(by);
        var population = populations.get(by);
        var reader = new RowReader(population, collections, layout, findings);
        var rows = sheet.lines().stream().map(reader::read).toList();
        tellRepeated(rows, Column.NUMBER, StatedRow::number, findings);
        tellRepeated(
                rows,
                Column.REFERENCE,
                row -> row.reference() == null ? null : List.of(String.valueOf(row.collection()), row.reference()),
                findings);

        var known = known(by, rows);
        var inSheet = rows.stream()
                .map(row -> new SheetAnimal(row, registered(row, known, findings)))
                .toList();
        var parents = new ParentFinder(
                by.populationCode(),
                collections.stream().map(CollectionView::id).toList(),
                inSheet,
                known,
                findings);
        inSheet.forEach(parents::find);

        var toAdd = inSheet.stream().filter(SheetAnimal::isNew).toList();
        var rules = new SheetRules(
                new ParentageRules(population.profile(), population.locality(), LocalDate.now(clock)), leave, findings);
        for (var animal : toAdd) {
            rules.check(animal);
            var label = animal.stated.collectionLabel();
            if (animal.stated.collection() == null) {
                findings.error(
                        animal.row(), Column.COLLECTION, label.isEmpty() ? null : label, reader.whichCollection(label));
            }
        }
        rules.checkTransponders(inSheet, known);
        rules.checkRoles(inSheet);
        rules.checkYears(toAdd);
        int alreadyKnown = 0;
        for (var animal : inSheet) {
            if (animal.known != null && KnownRow.agrees(animal, animal.known.view(), findings)) {
                alreadyKnown++;
            }
        }
        var parentsFirst = FamilyOrder.of(toAdd, findings);
        return new Plan(findings.report(rows.size(), toAdd.size(), alreadyKnown), toAdd, parentsFirst, rules.left());
    }

    private static void tellRepeated(
            List<StatedRow> rows, Column column, Function<StatedRow, @Nullable Object> key, Findings findings) {
        Map<Object, StatedRow> first = new HashMap<>();
        for (var row : rows) {
            var named = key.apply(row);
            var before = named == null ? null : first.putIfAbsent(named, row);
            if (before != null) {
                var value = column == Column.NUMBER ? row.number() : row.reference();
                findings.error(
                        row.row(),
                        column,
                        value,
                        "Row %d has the %s %s already. Is it the same animal twice? Delete one of the rows, or change one of them."
                                .formatted(before.row(), column.header(), value));
            }
        }
    }

    /** Everything of the register that the rows name, in one go. */
    private KnownAnimals known(Standing by, List<StatedRow> rows) {
        var numbers = new HashSet<String>();
        var references = new HashSet<String>();
        for (var row : rows) {
            if (row.number() != null) {
                numbers.add(row.number().toString());
            }
            if (row.reference() != null) {
                references.add(row.reference());
            }
            var parents = new ArrayList<>(ParentFinder.names(row.sire()));
            if (row.dam() != null) {
                parents.add(row.dam());
            }
            for (var parent : parents) {
                ParentFinder.number(parent, by.populationCode()).ifPresent(numbers::add);
                references.add(parent);
            }
        }
        var withTransponders = rows.stream().anyMatch(row -> !row.transponders().isEmpty());
        return animals.known(by, numbers, references, withTransponders);
    }

    /** The registered animal that a row is about; null when it is a new one. */
    private static @Nullable KnownAnimal registered(StatedRow row, KnownAnimals known, Findings findings) {
        var called = row.reference() == null || row.collection() == null
                ? null
                : known.called(new KnownAnimals.OwnReference(row.collection(), row.reference()))
                        .orElse(null);
        if (row.number() == null) {
            return called;
        }
        var numbered = known.numbered(row.number().toString()).orElse(null);
        if (called != null && !Objects.equals(numbered, called)) {
            findings.error(
                    row.row(),
                    Column.NUMBER,
                    row.number(),
                    "You call %s \"%s\" already, and this row gives %s that reference. Correct the number or the reference."
                            .formatted(called.view().number(), row.reference(), row.number()));
        }
        if (StudbookNumber.isReserved(row.number().nodeCode())) {
            findings.error(
                    row.row(),
                    Column.NUMBER,
                    row.number(),
                    "No studbook issues %s: codes that begin with 0 are kept for animals whose number is not told. Read the number again, or leave the cell empty for a fresh one."
                            .formatted(row.number()));
        }
        if (numbered == null && row.number().serial() > HIGHEST_SERIAL_KEPT) {
            findings.error(
                    row.row(),
                    Column.NUMBER,
                    row.number(),
                    "No studbook counts as far as %s; read the number again, or leave the cell empty for a fresh one."
                            .formatted(row.number()));
        }
        return numbered;
    }
}
