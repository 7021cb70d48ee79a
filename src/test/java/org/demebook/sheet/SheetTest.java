package org.demebook.sheet;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.time.LocalDate;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.demebook.problem.Refusal;
import org.dhatim.fastexcel.Workbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SheetTest {
    private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");
    private static final String NOTE = "Größe über 1 €, “schön”";

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void the_separator_is_told_from_the_header(String separator) {
        var sheet =
                csv("id" + separator + "sex" + separator + "notes\nA" + separator + "f" + separator + "calm, big\n");
        assertThat(sheet.header()).containsExactly("id", "sex", "notes");
        assertThat(sheet.lines().get(0).cells()[0]).isEqualTo("A");
    }

    @Test
    void a_line_that_a_spreadsheet_wrote_for_itself_is_no_header() {
        assertThat(csv("sep=;\r\nid;sex\r\nA;f\r\n").header()).containsExactly("id", "sex");
    }

    @Test
    void text_is_read_in_the_encodings_in_which_spreadsheets_save_it() {
        var text = "id,notes\nA,\"" + NOTE + "\"\n";
        assertThat(note(read(text.getBytes(UTF_8)))).isEqualTo(NOTE);
        assertThat(note(read(("\uFEFF" + text).getBytes(UTF_8)))).isEqualTo(NOTE);
        assertThat(note(read(text.getBytes(WINDOWS_1252)))).isEqualTo(NOTE);
        var unicodeText = "\uFEFFid\tnotes\nA\t" + NOTE + "\n";
        assertThat(note(read(unicodeText.getBytes(UTF_16LE)))).isEqualTo(NOTE);
    }

    @Test
    void bytes_that_cannot_be_read_are_refused_with_their_line() {
        // 81 is no sign of Windows-1252 (Unicode Consortium, CP1252.TXT)
        assertThatThrownBy(() -> read(new byte[] {'i', 'd', '\n', 'A', '\n', (byte) 0x81}))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Line 3");
        // C3 28 is malformed UTF-8, and the ü before it says that the file is meant to be UTF-8
        assertThatThrownBy(() -> read(bytes("id\nü\nx", 0xC3, 0x28)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Line 3")
                .hasMessageContaining("UTF-8");
        assertThatThrownBy(() -> read(bytes("\uFEFFid\nx", 0xFF)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Line 2");
    }

    @Test
    void rows_are_counted_as_the_spreadsheet_counts_them_and_blank_ones_are_left_out() {
        var sheet = csv("id,notes\nA,\"two\nlines\"\n\n,\nB,x\n");
        assertThat(sheet.lines()).extracting(Sheet.Line::row).containsExactly(2, 5);
    }

    @Test
    void a_quotation_mark_left_open_is_refused() {
        assertThatThrownBy(() -> csv("id,notes\nA,\"open\nB,x\n")).isInstanceOf(Refusal.class);
    }

    @Test
    void an_empty_file_is_refused_with_the_columns_that_it_needs() {
        assertThatThrownBy(() -> csv("")).isInstanceOf(Refusal.class).hasMessageContaining("reference");
        assertThatThrownBy(() -> csv(" \n \n")).isInstanceOf(Refusal.class);
    }

    @Test
    void a_file_with_too_many_rows_is_refused() {
        assertThatThrownBy(() -> csv("id\n" + "A\n".repeat(Sheet.MOST_ROWS + 1)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("send it in parts");
    }

    @Test
    void in_a_workbook_dates_are_read_as_days_and_numbers_as_they_are() throws IOException {
        var out = new ByteArrayOutputStream();
        try (var workbook = new Workbook(out, "test", "1.0")) {
            var sheet = workbook.newWorksheet("one");
            sheet.value(0, 0, "id");
            sheet.value(0, 1, "born");
            sheet.value(0, 2, "died");
            sheet.value(0, 3, "chip");
            sheet.value(1, 0, 12);
            sheet.value(1, 1, LocalDate.of(2020, 2, 29));
            sheet.style(1, 1).format("dd.mm.yyyy").set();
            sheet.value(1, 2, 2024);
            sheet.value(1, 3, 981_000_000_000_123L);
            workbook.newWorksheet("two").value(0, 0, "never read");
        }
        var read = Sheet.read(out.toByteArray(), Sheet.EXCEL);
        assertThat(read.header()).containsExactly("id", "born", "died", "chip");
        assertThat(read.lines().get(0).cells()).containsExactly("12", "2020-02-29", "2024", "981000000000123");
    }

    @ParameterizedTest
    @CsvSource({"YYYY-MM-DD, true", "\\d0.00, false", "[Red]0, false", "0.00, false", "d\\. mmm, true"})
    void a_number_is_a_day_when_its_format_shows_one(String format, boolean day) throws IOException {
        var out = new ByteArrayOutputStream();
        try (var workbook = new Workbook(out, "test", "1.0")) {
            var sheet = workbook.newWorksheet("one");
            sheet.value(0, 0, "born");
            sheet.value(1, 0, 43890);
            sheet.style(1, 0).format(format).set();
        }
        // 43890 is 29 February 2020 in the calendar that counts from 1900 (ECMA-376 part 1, 18.17.4)
        assertThat(Sheet.read(out.toByteArray(), Sheet.EXCEL).lines().get(0).cells()[0])
                .isEqualTo(day ? "2020-02-29" : "43890");
    }

    @Test
    void what_is_no_workbook_is_refused() throws IOException {
        assertThatThrownBy(() -> Sheet.read("id\nA".getBytes(UTF_8), Sheet.EXCEL))
                .isInstanceOf(Refusal.class);
        var zip = new ByteArrayOutputStream();
        try (var out = new ZipOutputStream(zip)) {
            out.putNextEntry(new ZipEntry("readme.txt"));
            out.write('x');
        }
        assertThatThrownBy(() -> Sheet.read(zip.toByteArray(), Sheet.EXCEL)).isInstanceOf(Refusal.class);
    }

    @Test
    void a_workbook_that_unpacks_to_more_than_the_memory_holds_is_refused() throws IOException {
        var zip = new ByteArrayOutputStream();
        try (var out = new ZipOutputStream(zip)) {
            out.putNextEntry(new ZipEntry("xl/worksheets/sheet1.xml"));
            var block = new byte[1 << 20];
            for (int i = 0; i < 260; i++) {
                out.write(block);
            }
        }
        assertThat(zip.size()).isLessThan(1 << 20);
        assertThatThrownBy(() -> Sheet.read(zip.toByteArray(), Sheet.EXCEL))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("too large");
    }

    @ParameterizedTest
    @CsvSource({
        "Studbook Number, NUMBER",
        "ID, REFERENCE",
        "Own_Reference, REFERENCE",
        "mother, DAM",
        "FATHER, SIRE",
        "gender, SEX",
        "Birth Date, BORN",
        "date of birth, BORN",
        "birthYear, BORN",
        "hatched, BORN",
        "Died, DIED",
        "WC/CB, ORIGIN",
        "CITES source, SOURCE",
        "PIT tag, TRANSPONDERS",
        "microchip, TRANSPONDERS",
        "Comments, NOTES"
    })
    void columns_are_known_by_the_words_of_the_trade(String header, Column column) {
        assertThat(Column.of(header)).contains(column);
    }

    private static Sheet csv(String text) {
        return read(text.getBytes(UTF_8));
    }

    private static Sheet read(byte[] bytes) {
        return Sheet.read(bytes, Sheet.CSV);
    }

    private static String note(Sheet sheet) {
        return sheet.lines().get(0).cells()[1];
    }

    private static byte[] bytes(String text, int... more) {
        var out = new ByteArrayOutputStream();
        out.writeBytes(text.getBytes(UTF_8));
        for (int each : more) {
            out.write(each);
        }
        return out.toByteArray();
    }
}
