package org.demebook.web.sheets;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.problem.Finding.Level;
import org.demebook.sheet.Column;

/** Words of the pages of sheets. */
@MessageBundle("sheets")
public interface SheetsMessages {
    @Message("Import and export")
    String title();

    @Message("A list of your animals comes in from a spreadsheet, and goes out to one, in the same columns.")
    String lede();

    @Message("Import")
    String importing();

    @Message(
            "First everything is checked and nothing is registered. What is wrong you mend here, and only then it is imported: all of it, or nothing.")
    String importingHow();

    @Message("File")
    String file();

    @Message("CSV or Excel (.xlsx). The first row names the columns.")
    String fileHint();

    @Message("Or paste rows from a spreadsheet")
    String paste();

    @Message("With the row that names the columns.")
    String pasteHint();

    @Message("Check")
    String check();

    @Message("Choose a file, or paste some rows.")
    String nothingSent();

    @Message("A sheet to begin with")
    String template();

    @Message(
            "It has the names of all columns and nothing below. Only a reference or a number is needed; leave out what you do not know.")
    String templateHow();

    @Message("Empty sheet, CSV")
    String templateCsv();

    @Message("Empty sheet, Excel")
    String templateExcel();

    @Message("What goes into which column")
    String columns();

    @Message("Column")
    String columnHead();

    @Message("What stands in it")
    String columnMeaning();

    @Message
    String column(Column column);

    @Message("Export")
    String exporting();

    @Message(
            "All columns for the animals in your collections; of the others what their keepers let you see. The same sheet can be imported again.")
    String exportingHow();

    @Message("My animals, CSV")
    String mineCsv();

    @Message("My animals, Excel")
    String mineExcel();

    @Message("All that I may see, CSV")
    String allCsv();

    @Message("All that I may see, Excel")
    String allExcel();

    @Message("You act for no collection here yet. Open one first: each animal that you import goes into a collection.")
    String noCollection();

    @Message("Open a collection")
    String openCollection();

    @Message("Check of the sheet")
    String checked();

    @Message("Nothing is registered yet.")
    String nothingYet();

    @Message("Rows")
    String rows();

    @Message("New animals")
    String wouldAdd();

    @Message("Registered already")
    String alreadyKnown();

    @Message("To mend")
    String errors();

    @Message("To look at")
    String warnings();

    @Message("Nothing is in the way.")
    String clean();

    @Message("Nothing in this sheet is new: every animal is registered already.")
    String nothingNew();

    @Message("About the whole sheet")
    String whole();

    @Message("To mend first")
    String mend();

    @Message("Write what is right into the cell, then check again. With one wrong cell nothing is imported.")
    String mendHow();

    @Message("Only to look at")
    String look();

    @Message("None of this is in the way. Mend what is wrong; the rest is imported as it stands.")
    String lookHow();

    @Message("Row {row}")
    String row(int row);

    @Message("Names of the columns")
    String headerRow();

    @Message("Cell")
    String cell();

    @Message("What is noticed")
    String noticed();

    @Message("Column {place}")
    String unnamed(int place);

    @Message("Leave row {row} out")
    String leaveOut(int row);

    @Message("Other cells of row {row}")
    String otherCells(int row);

    @Message("{count} more rows are shown when these are mended.")
    String moreRows(int count);

    @Message("{count} more rows have something to look at.")
    String moreToLookAt(int count);

    @Message("Leave as it is")
    String leave();

    @Message(
            "Where a rule speaks against what happened all the same, it can stay as it is in the whole sheet. The reason is kept with each animal.")
    String leaveHow();

    @Message("Leave {count} as they are")
    String leaveThese(int count);

    @Message("Left as it is")
    String leftBefore();

    @Message("How it is known")
    String reason();

    @Message("Say in {least} to {most} characters how it is known.")
    String reasonWanted(int least, int most);

    @Message("Check again")
    String checkAgain();

    @Message("Import {count} animals")
    String start(int count);

    @Message("Import 1 animal")
    String startOne();

    @Message("There is something to mend first; nothing was imported.")
    String mendFirst();

    @Message("This sheet is too large to be mended in the page. Mend it in your spreadsheet and choose the file again.")
    String tooLarge();

    @Message("This sheet is too large to travel through the page: choose the same file again to import it.")
    String chooseAgain();

    @Message("Another sheet")
    String another();

    @Message("Import")
    String run();

    @Message("The import is at work: {done} of {total} rows.")
    String running(int done, int total);

    @Message("This page looks by itself how far it is. You may leave it; the work goes on.")
    String runningHow();

    @Message("Look again")
    String lookAgain();

    @Message("{count} animals are registered.")
    String done(int count);

    @Message("{count} rows were about animals that were registered before and say the same.")
    String doneKnown(int count);

    @Message("Nothing was imported")
    String refused();

    @Message(
            "Something changed in the register since the sheet was checked. Send the sheet again: the check shows what to mend.")
    String refusedHow();

    @Message("To my animals")
    String toAnimals();

    @Message
    String level(Level level);
}
