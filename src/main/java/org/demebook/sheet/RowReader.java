package org.demebook.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.demebook.keeper.CollectionView;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.demebook.notation.StudbookNumber;
import org.demebook.notation.Transponder;
import org.demebook.registry.LocalityClaim;
import org.demebook.registry.LocalityClaim.Certainty;
import org.demebook.registry.NewAnimal;
import org.demebook.registry.PopulationView;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/** Reads the cells of a row, each by the rules of what it holds; what cannot be read is told and left out. */
final class RowReader {
    private static final Pattern CONTROL_CHARACTER = Pattern.compile("[\\p{Cc}&&[^\\n\\t]]");
    private static final Pattern ROUNDED = Pattern.compile("[0-9][.,]?[0-9]*[eE]\\+?[0-9]+");
    private static final Pattern DAY_AS_NUMBER = Pattern.compile("[0-9]{5}");

    private static final int LONGEST_SIRE = StatedSire.MOST_CANDIDATES * 2 * NewAnimal.LONGEST_REFERENCE;

    private final String populationCode;
    private final String ownLocality;
    private final List<CollectionView> collections;
    private final Layout layout;
    private final Findings findings;

    RowReader(PopulationView population, List<CollectionView> collections, Layout layout, Findings findings) {
        this.populationCode = population.code();
        this.ownLocality = population.locality();
        this.collections = collections;
        this.layout = layout;
        this.findings = findings;
    }

    StatedRow read(Sheet.Line line) {
        layout.checkWidth(line, findings);
        var number = read(line, Column.NUMBER, this::number);
        var reference = text(line, Column.REFERENCE, NewAnimal.LONGEST_REFERENCE);
        if (layout.text(line, Column.NUMBER).isEmpty()
                && layout.text(line, Column.REFERENCE).isEmpty()) {
            findings.error(
                    line.row(),
                    Column.REFERENCE,
                    null,
                    "The row does not say which animal it is about. Give it a reference of your own, so that it is known again when the file is sent once more.");
        }
        return new StatedRow(
                line.row(),
                number,
                reference,
                text(line, Column.DAM, NewAnimal.LONGEST_REFERENCE),
                read(line, Column.SIRE, RowReader::sire),
                read(line, Column.SEX, Sex::parse),
                read(line, Column.BORN, RowReader::date),
                read(line, Column.DIED, RowReader::date),
                read(line, Column.ORIGIN, Origin::parse),
                read(line, Column.SOURCE, SourceCode::parse),
                locality(line),
                layout.text(line, Column.COLLECTION),
                collection(layout.text(line, Column.COLLECTION)),
                transponders(line),
                marks(line),
                text(line, Column.NOTES, NewAnimal.LONGEST_NOTES));
    }

    private <T> @Nullable T read(Sheet.Line line, Column column, Function<String, @Nullable T> reader) {
        var text = layout.text(line, column);
        if (text.isEmpty()) {
            return null;
        }
        try {
            return reader.apply(text);
        } catch (IllegalArgumentException e) {
            findings.error(line.row(), column, text, e.getMessage() + ".");
            return null;
        }
    }

    private @Nullable String text(Sheet.Line line, Column column, int longest) {
        return read(line, column, text -> {
            requirePlain(text, longest);
            return column == Column.DAM && text.matches(SireText.UNKNOWN) ? null : text;
        });
    }

    private static void requirePlain(String text, int longest) {
        if (text.length() > longest) {
            throw new IllegalArgumentException(
                    "This has %d characters, at most %d are kept; shorten it".formatted(text.length(), longest));
        }
        if (CONTROL_CHARACTER.matcher(text).find()) {
            throw new IllegalArgumentException("This holds a character that cannot be printed; type it again");
        }
    }

    private StudbookNumber number(String text) {
        var number = StudbookNumber.parse(text);
        if (!number.populationCode().equals(populationCode)) {
            throw new IllegalArgumentException(
                    "%s is a number of the population %s; numbers of this one begin with %s. Leave the cell empty to have the animal registered under a fresh number"
                            .formatted(number, number.populationCode(), populationCode));
        }
        return number;
    }

    /** A locality alone is stated; a certainty alone is of the population's locality. */
    private @Nullable LocalityClaim locality(Sheet.Line line) {
        var locality = text(line, Column.LOCALITY, LocalityClaim.LONGEST);
        var certainty = read(line, Column.LOCALITY_CERTAINTY, Certainty::parse);
        return locality == null && certainty == null
                ? null
                : new LocalityClaim(locality, Objects.requireNonNullElse(certainty, Certainty.STATED)).in(ownLocality);
    }

    private static @Nullable StatedSire sire(String text) {
        requirePlain(text, LONGEST_SIRE);
        return SireText.parse(text);
    }

    private static RoughDate date(String text) {
        if (DAY_AS_NUMBER.matcher(text).matches()) {
            throw new IllegalArgumentException(
                    "This is a day as a spreadsheet counts it; give the column the format of a date, or write the date like 2026-06-29");
        }
        return RoughDate.parse(text);
    }

    private @Nullable UUID collection(String label) {
        var meant = collections.stream()
                .filter(collection ->
                        label.isEmpty() || collection.label().strip().equals(label))
                .toList();
        return meant.size() == 1 ? meant.get(0).id() : null;
    }

    /** What to do when a row does not say in which collection its animal is. */
    String whichCollection(String label) {
        if (collections.isEmpty()) {
            return "You have no collection in %s yet; open one first.".formatted(populationCode);
        }
        if (label.isEmpty()) {
            return "You act for %d collections; say which one holds the animal.".formatted(collections.size());
        }
        return "You act for no collection called \"%s\", or for several; open it first, or correct the name."
                .formatted(Findings.shortened(label));
    }

    private List<Transponder> transponders(Sheet.Line line) {
        var codes = new ArrayList<Transponder>();
        for (var text : several(line, Column.TRANSPONDERS)) {
            try {
                if (ROUNDED.matcher(text).matches()) {
                    throw new IllegalArgumentException(
                            "The spreadsheet has rounded this code; give the column the format of text and enter the code again");
                }
                codes.add(Transponder.parse(text));
            } catch (IllegalArgumentException e) {
                findings.error(line.row(), Column.TRANSPONDERS, text, e.getMessage() + ".");
            }
        }
        return codes.stream().distinct().toList();
    }

    private List<String> marks(Sheet.Line line) {
        var marks = several(line, Column.MARKS);
        for (var mark : marks) {
            try {
                requirePlain(mark, NewAnimal.LONGEST_MARK);
            } catch (IllegalArgumentException e) {
                findings.error(line.row(), Column.MARKS, mark, e.getMessage() + ".");
            }
        }
        return marks;
    }

    private List<String> several(Sheet.Line line, Column column) {
        var values = Cells.split(layout.text(line, column));
        if (values.size() > NewAnimal.MOST_MARKS) {
            findings.error(
                    line.row(),
                    column,
                    null,
                    "There are %d values in the cell, at most %d are kept."
                            .formatted(values.size(), NewAnimal.MOST_MARKS));
        }
        return values;
    }
}
