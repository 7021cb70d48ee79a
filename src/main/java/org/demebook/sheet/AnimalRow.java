package org.demebook.sheet;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.registry.AnimalView;
import org.demebook.registry.IdentifierView;
import org.jspecify.annotations.Nullable;

/** An animal as a row: a text for each column, in their order. */
final class AnimalRow {
    private AnimalRow() {}

    /**
     * @param labels of the asker's collections; that of an animal on loan to somebody else is its owner's
     */
    static String[] of(AnimalView animal, Map<UUID, String> labels) {
        var cells = new String[Column.values().length];
        for (var column : Column.values()) {
            cells[column.ordinal()] = Cells.write(text(column, animal, labels));
        }
        return cells;
    }

    private static String text(Column column, AnimalView animal, Map<UUID, String> labels) {
        return switch (column) {
            case NUMBER -> animal.number();
            case DAM -> Objects.requireNonNullElse(animal.dam(), "");
            case SIRE -> SireText.of(animal.sire());
            case SEX -> animal.sex() == Sex.UNKNOWN ? "" : animal.sex().word();
            case BORN -> text(animal.born());
            case ORIGIN ->
                animal.origin() == Origin.UNKNOWN ? "" : animal.origin().word();
            case LOCALITY ->
                animal.locality() == null ? "" : text(animal.locality().locality());
            case LOCALITY_CERTAINTY ->
                animal.locality() == null ? "" : animal.locality().certainty().word();
            case REFERENCE, DIED, SOURCE, COLLECTION, TRANSPONDERS, MARKS, NOTES ->
                animal.held() == null ? "" : heldText(column, animal.held(), labels);
        };
    }

    private static String heldText(Column column, AnimalView.Held held, Map<UUID, String> labels) {
        return switch (column) {
            case REFERENCE ->
                identifiers(held, "own-reference").stream().findFirst().orElse("");
            case DIED -> text(held.died());
            case SOURCE -> held.sourceCode() == null ? "" : held.sourceCode().letter();
            case COLLECTION ->
                Objects.requireNonNullElseGet(
                        held.collection() == null ? null : labels.get(held.collection()),
                        () -> held.owner() == null ? "" : labels.getOrDefault(held.owner(), ""));
            case TRANSPONDERS -> Cells.join(identifiers(held, "transponder"));
            case MARKS -> Cells.join(identifiers(held, "mark"));
            case NOTES -> text(held.notes());
            case NUMBER, DAM, SIRE, SEX, BORN, ORIGIN, LOCALITY, LOCALITY_CERTAINTY ->
                throw new IllegalArgumentException(column.header());
        };
    }

    private static List<String> identifiers(AnimalView.Held held, String kind) {
        return held.identifiers().stream()
                .filter(identifier -> identifier.kind().equals(kind))
                .map(IdentifierView::value)
                .toList();
    }

    private static String text(@Nullable Object value) {
        return Objects.toString(value, "");
    }
}
