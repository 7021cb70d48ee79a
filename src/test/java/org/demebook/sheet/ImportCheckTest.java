package org.demebook.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.demebook.Colony;
import org.demebook.notation.StudbookNumber;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ImportCheckTest {
    static Colony colony;
    static Sheets wren;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        wren = new Sheets(colony, WREN);
    }

    // ── the whole ────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_sheet_without_fault_says_what_it_would_add_and_changes_nothing() {
        var before = wren.exportedText("");
        wren.check(
                        "id,dam,sire,sex,born,origin",
                        "Fern,,,f,2015-06,wild-caught",
                        "Moss,,,m,2015-07,WC",
                        "Ash,Fern,Moss,,2019-06-29,cb")
                .statusCode(200)
                .body("rows", equalTo(3))
                .body("wouldAdd", equalTo(3))
                .body("alreadyKnown", equalTo(0))
                .body("errors", equalTo(0))
                .body("warnings", equalTo(0))
                .body("findings", empty());
        assertThat(wren.exportedText("")).isEqualTo(before);
    }

    @Test
    void every_finding_is_told_with_row_column_value_and_what_to_do() {
        wren.check("id,sex,born", "A,f,2015", "B,hermaphrodite,03/04/2019")
                .body("errors", equalTo(2))
                .body("findings[0].row", equalTo(3))
                .body("findings[0].column", equalTo("sex"))
                .body("findings[0].value", equalTo("hermaphrodite"))
                .body("findings[0].level", equalTo("error"))
                .body("findings[0].message", containsString("write female, male or unknown"))
                .body("findings[1].column", equalTo("born"))
                .body("findings[1].message", containsString("2019-03-04"))
                .body("findings[1].message", containsString("2019-04-03"));
    }

    @Test
    void the_findings_come_as_csv_when_that_is_asked_for() {
        var text = Colony.as(WREN)
                .contentType("text/csv")
                .accept("text/csv")
                .body("id,sex\nA,=1+1\n")
                .post(colony.path("/import-checks"))
                .then()
                .statusCode(200)
                .contentType(startsWith("text/csv"))
                .extract()
                .asString();
        assertThat(text.lines())
                .containsExactly(
                        "row,column,level,value,message,rule",
                        "2,sex,error,'=1+1,\"This does not read as a sex; write female, male or unknown.\",");
    }

    @Test
    void the_first_thousand_findings_are_shown_and_all_are_counted() {
        var lines = IntStream.rangeClosed(0, 1500)
                .mapToObj(i -> i == 0 ? "id,sex" : "A" + i + ",x")
                .toArray(String[]::new);
        wren.check(lines).body("errors", equalTo(1500)).body("findings", hasSize(1000));
    }

    @Test
    void a_file_that_cannot_be_read_is_refused() {
        wren.check(new byte[] {'i', 'd', '\n', (byte) 0x81}, Sheets.CSV)
                .statusCode(422)
                .body("type", equalTo("/problems/unreadable-sheet"))
                .body("detail", containsString("Line 2"));
        wren.check(new byte[0], Sheets.CSV).statusCode(422).body("type", equalTo("/problems/unreadable-sheet"));
        wren.check(Sheets.bytes("id", "A"), "application/json").statusCode(415);
    }

    @Test
    void somebody_who_does_not_belong_to_the_population_may_not_ask() {
        new Sheets(colony, OUTSIDER).check("id", "A").statusCode(404);
    }

    // ── columns ──────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_unknown_column_is_a_warning_that_its_values_are_kept_nowhere() {
        wren.check("id,favourite food", "A,rats")
                .body("errors", equalTo(0))
                .body("wouldAdd", equalTo(1))
                .body("findings[0].row", equalTo(1))
                .body("findings[0].level", equalTo("warning"))
                .body("findings[0].message", containsString("kept nowhere"));
    }

    @Test
    void two_columns_of_one_meaning_are_an_error() {
        one(wren.check("id,name", "A,Ash"), "reference", "both mean reference");
    }

    @Test
    void a_sheet_that_names_no_animal_is_an_error() {
        one(wren.check("sex,born", "f,2015"), null, "no column \"reference\"");
    }

    @Test
    void a_value_under_no_header_is_an_error() {
        one(wren.check("id,notes", "A,calm, but bites"), null, "no column is named");
    }

    // ── cells ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_row_that_does_not_name_its_animal_is_an_error() {
        one(wren.check("id,sex", ",f"), "reference", "which animal it is about");
    }

    @Test
    void a_text_too_long_to_be_kept_is_an_error() {
        one(wren.check("id,notes", "A," + "x".repeat(2001)), "notes", "at most 2000");
        one(wren.check("id", "x".repeat(61)), "reference", "at most 60");
        one(wren.check("id,marks", "A," + "x".repeat(201)), "marks", "at most 200");
        var many =
                String.join(";", IntStream.range(0, 21).mapToObj(i -> "m" + i).toList());
        one(wren.check("id,marks", "A," + many), "marks", "at most 20");
    }

    @Test
    void a_character_that_cannot_be_printed_is_an_error() {
        one(wren.check("id,notes", "A,ring\u0007"), "notes", "cannot be printed");
    }

    @Test
    void an_origin_that_may_mean_either_is_an_error() {
        one(wren.check("id,origin", "A,captive hatched"), "origin", "gravid");
    }

    @Test
    void a_source_that_is_no_code_is_an_error() {
        one(wren.check("id,source", "A,Z"), "source", "one letter of");
    }

    @Test
    void a_day_as_a_spreadsheet_counts_it_is_an_error() {
        one(wren.check("id,born", "A,43890"), "born", "format of a date");
    }

    @Test
    void a_day_that_has_not_come_is_an_error() {
        one(wren.check("id,born", "A,2199"), "born", "future");
        one(wren.check("id,died", "A,2199"), "died", "future");
    }

    @Test
    void a_mistyped_number_or_one_of_another_population_is_an_error() {
        var number = new StudbookNumber(colony.code, "H", 900_001).toString();
        var last = number.charAt(number.length() - 1);
        one(
                wren.check("number", number.substring(0, number.length() - 1) + (last == '7' ? '8' : '7')),
                "number",
                "check character");
        one(wren.check("number", new StudbookNumber("ZZZZ", "H", 1).toString()), "number", "population ZZZZ");
    }

    @Test
    void a_number_further_than_any_studbook_counts_is_an_error() {
        one(
                wren.check("number", new StudbookNumber(colony.code, "H", 100_000_000).toString()),
                "number",
                "read the number again");
    }

    @Test
    void a_sire_that_cannot_be_read_is_an_error() {
        one(wren.check("id,sire", "A,B:2|C:1"), "sire", "probability");
    }

    @Test
    void a_collection_that_is_not_ones_own_is_an_error() {
        one(wren.check("id,collection", "A,ines's rack"), "collection", "You act for no collection called");
    }

    @Test
    void who_has_two_collections_says_which() {
        var own = Colony.found();
        own.post(WREN, "/collections", Map.of("label", "attic")).statusCode(201);
        var sheets = new Sheets(own, WREN);
        one(sheets.check("id", "A"), "collection", "You act for 2 collections");
        sheets.check("id,collection", "A,attic", "A,wren's rack")
                .body("errors", equalTo(0))
                .body("wouldAdd", equalTo(2));
        one(
                sheets.check(
                        "id,collection,dam,sex",
                        "A,attic,,f",
                        "A,wren's rack,,f",
                        "B,attic,A,",
                        "C,wren's rack,A,",
                        "D,attic,D2,"),
                "dam",
                "called D2");
    }

    @Test
    void who_has_no_collection_opens_one_first() {
        var own = Colony.found();
        Colony.token(OUTSIDER);
        own.post(WREN, "/members", Map.of("name", OUTSIDER, "role", "member")).statusCode(200);
        one(new Sheets(own, OUTSIDER).check("id", "A"), "collection", "open one first");
    }

    // ── rows beside each other ───────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_reference_twice_in_a_sheet_is_an_error() {
        one(wren.check("id", "A", "B", "A"), "reference", "Row 2 has the reference A already");
    }

    @Test
    void a_number_twice_in_a_sheet_is_an_error() {
        var number = new StudbookNumber(colony.code, "H", 900_002).toString();
        one(wren.check("number,id", number + ",A", number + ",B"), "number", "Row 2 has the number");
    }

    @Test
    void a_parent_that_is_nowhere_is_an_error() {
        one(wren.check("id,dam", "A,Nobody"), "dam", "called Nobody");
        one(wren.check("id,sire", "A,Nobody"), "sire", "called Nobody");
        one(wren.check("id,sire", "A,B|Nobody", "B,"), "sire", "called Nobody");
        var number = new StudbookNumber(colony.code, "H", 900_003).toString();
        one(wren.check("id,dam", "A," + number), "dam", "has the number " + number);
        one(wren.check("id,dam", "A," + number.substring(0, number.length() - 1) + "*"), "dam", "check character");
    }

    @Test
    void an_animal_that_would_be_its_own_ancestor_is_an_error_that_names_the_loop() {
        one(wren.check("id,dam,sex", "A,B,f", "B,C,f", "C,A,f", "D,C,"), null, "A < B < C < A")
                .body("findings[0].message", containsString("rows 2, 3, 4"));
        one(wren.check("id,dam", "A,A"), null, "A < A");
        one(wren.check("id,dam,sire,sex", "A,F,B|C,m", "B,,A,m", "C,,,m", "F,,,f"), null, "A < B < A");
    }

    @Test
    void an_animal_that_is_dam_in_one_row_and_sire_in_another_is_an_error() {
        one(wren.check("id,dam,sire", "A,X,", "B,,X", "X,,"), "sire", "as dam of A in row 2");
    }

    @Test
    void a_transponder_twice_among_the_living_is_an_error_and_on_a_dead_animal_none() {
        one(
                wren.check("id,chip", "A,981000000000001", "B,981 000 000 000 001"),
                "transponders",
                "carried by A in row 2");
        wren.check("id,chip,died", "A,981000000000001,2019", "B,981000000000001,")
                .body("errors", equalTo(0));
    }

    @Test
    void a_transponder_that_cannot_be_one_is_an_error() {
        one(wren.check("id,chip", "A,999000000000001"), "transponders", "test tag");
        one(wren.check("id,chip", "A,\"9,81E+14\""), "transponders", "rounded");
    }

    // ── the rules of the register ────────────────────────────────────────────────────────────────────────────────────

    @Test
    void every_rule_of_parentage_holds_for_a_sheet_as_for_a_single_animal() {
        one(wren.check("id,dam,sex", "A,B,", "B,,m"), "dam", "registered as male");
        one(wren.check("id,sire,sex", "A,B,", "B,,f"), "sire", "registered as female");
        one(wren.check("id,dam,born", "A,B,2010", "B,,2012"), "dam", "a parent is born first");
        one(wren.check("id,dam,born", "A,B,2010-06-01", "B,,2010-01-01"), "dam", "at least 365");
        one(wren.check("id,sire,born", "A,B,2010-06-01", "B,,2010-01-01"), "sire", "at least 365");
        one(wren.check("id,dam,born,died", "A,B,2015,", "B,,2010,2013"), "dam", "a dam lives at the birth");
        one(wren.check("id,born,died", "A,2015,2014"), "died", "cannot have died");
        one(wren.check("id,dam,origin", "A,B,wc", "B,,"), "origin", "wild-caught");
        one(wren.check("id,sire", "A,none"), "dam", "have a dam");
        one(wren.check("id,sire", "A,B:0.7|C:0.7", "B,", "C,"), "sire", "sum to 1.4");
        one(wren.check("id,sire", "A,B|B", "B,"), "sire", "stands twice");
    }

    @Test
    void a_sire_that_died_before_the_conception_is_a_warning() {
        wren.check("id,sire,born,died", "A,B,2015-06-01,", "B,,2010-01,2014-06-01")
                .body("errors", equalTo(0))
                .body("warnings", equalTo(1))
                .body("findings[0].column", equalTo("sire"))
                .body("findings[0].message", containsString("stored sperm"));
    }

    @Test
    void what_is_strained_by_the_rules_of_the_register_says_its_rule_and_whether_it_may_be_left() {
        wren.check("id,dam,born", "A,B,2010-06-01", "B,,2010-01-01")
                .body("findings[0].level", equalTo("error"))
                .body("findings[0].rule", equalTo("dam-too-young"))
                .body("findings[0].mayBeLeft", equalTo(true))
                .body("findings[0].why", containsString("mistyped year"));
        wren.check("id,born,died", "A,2015-01,2014-01")
                .body("findings[0].rule", equalTo("died-before-birth"))
                .body("findings[0].mayBeLeft", equalTo(false));
    }

    @Test
    void what_the_whole_import_leaves_is_no_finding() {
        wren.checkLeaving(
                        "dam-too-young", "her births are in the book", "id,dam,born", "A,B,2010-06-01", "B,,2010-01-01")
                .body("errors", equalTo(0));
        wren.checkLeaving("dam-too-yuong", "her births are in the book", "id", "A")
                .statusCode(400)
                .body("detail", containsString("dam-too-yuong"));
        wren.checkLeaving("dam-too-young", "", "id", "A").statusCode(400).body("detail", containsString("a reason"));
    }

    @Test
    void years_of_birth_alone_are_told_once_for_the_whole_sheet() {
        wren.check("id,born", "A,2015", "B,2016", "C,2016-01")
                .body("warnings", equalTo(1))
                .body("findings[0].rule", equalTo("year-only"))
                .body("findings[0].message", startsWith("2 rows"));
    }

    @Test
    void transponders_a_slip_of_the_hand_apart_are_a_warning() {
        wren.check("id,chip", "A,981000000555123", "B,981000000555132", "C,981000000550000")
                .body("errors", equalTo(0))
                .body("warnings", equalTo(1))
                .body("findings[0].row", equalTo(3))
                .body("findings[0].rule", equalTo("transponder-neighbour"))
                .body("findings[0].message", containsString("A in row 2"));
    }

    @Test
    void one_of_several_without_a_litter_is_a_warning() {
        wren.check("id,sire", "A,one of B|C", "B,", "C,")
                .body("errors", equalTo(0))
                .body("findings[0].level", equalTo("warning"))
                .body("findings[0].message", containsString("stands for itself"));
    }

    // ── beside the register ──────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void registered_animals_are_parents_by_number_and_by_the_keepers_own_reference() {
        var dam = animal("female", "2015");
        dam.put("ownReference", "Willow");
        var damNumber = colony.register(WREN, dam);
        var sire = colony.male(INES);

        wren.check("id,dam,sire,born", "A,Willow," + sire + ",2024").body("errors", equalTo(0));
        wren.check("id,dam,sire,born", "A," + damNumber.toLowerCase() + "," + sire + ",2024")
                .body("errors", equalTo(0));
        one(wren.check("id,dam,born", "A,Willow,2014"), "dam", "a parent is born first");
        one(new Sheets(colony, INES).check("id,dam", "A,Willow"), "dam", "called Willow");
    }

    @Test
    void a_transponder_of_a_living_registered_animal_is_an_error() {
        var carrier = animal("male", "2015");
        carrier.put("transponders", List.of("981000000000777"));
        var number = colony.register(INES, carrier);

        one(
                wren.check("id,chip", "A,981000000000777"),
                "transponders",
                "carried by an animal that is not shown to you");
        colony.put(INES, number, "/death", Map.of("on", "2026-01-01")).statusCode(200);
        wren.check("id,chip", "A,981000000000777").body("errors", equalTo(0));
    }

    @Test
    void a_row_about_a_registered_animal_that_says_the_same_is_known_already() {
        var known = known("Heron");
        wren.check(
                        "number,id,sex,born,died,origin,source,chip,marks,notes",
                        known + ",Heron,f,2015-06-01,,wc,W," + chipOf("Heron") + ",notch,calm",
                        ",Heron 2,,,,,,,,")
                .body("errors", equalTo(0))
                .body("alreadyKnown", equalTo(1))
                .body("wouldAdd", equalTo(1));
        wren.check("id", "Heron").body("alreadyKnown", equalTo(1)).body("wouldAdd", equalTo(0));
        wren.check("id,born,sex,origin", "Heron,2015,unknown,?").body("alreadyKnown", equalTo(1));
    }

    @Test
    void a_row_about_a_registered_animal_that_says_otherwise_is_an_error_with_both_facts() {
        var number = known("Egret");
        one(wren.check("id,sex", "Egret,m"), "sex", "this row says male, the register has female")
                .body("findings[0].message", containsString("Egret (" + number + ")"))
                .body("findings[0].message", containsString("Correct it in the register"));
        one(wren.check("id,born", "Egret,2016"), "born", "the register has 2015-06-01");
        one(wren.check("id,died", "Egret,2020"), "died", "the register has it alive");
        one(wren.check("id,origin", "Egret,cb"), "origin", "the register has wild-caught");
        one(wren.check("id,source", "Egret,C"), "source", "the register has W");
        one(wren.check("id,chip", "Egret,981000000004321"), "transponders", "the register has " + chipOf("Egret"));
        one(wren.check("id,marks", "Egret,scar"), "marks", "the register has notch");
        one(wren.check("id,notes", "Egret,bites"), "notes", "the register has calm");
        one(wren.check("id,dam", "Egret,Mother", "Mother,"), "dam", "the register knows of no dam");
        one(wren.check("id,sire", "Egret,Father", "Father,"), "sire", "the register knows of no sire");
        one(wren.check("number,id", number + ",Ibis"), "reference", "the register has Egret");
        wren.check("number,id", colony.female(WREN) + ",Egret")
                .body("errors", equalTo(2))
                .body("findings[0].message", containsString("You call " + number));
    }

    @Test
    void a_sire_that_is_stated_in_another_way_is_told_from_the_registered_one() {
        var dam = colony.female(WREN);
        var one = colony.male(WREN);
        var two = colony.male(WREN);
        var young = animal("female", "2024-06-29");
        young.put("dam", dam);
        young.put(
                "sire",
                Map.of(
                        "kind",
                        "candidates",
                        "wholeLitter",
                        true,
                        "candidates",
                        List.of(Map.of("animal", one, "probability", 0.6), Map.of("animal", two, "probability", 0.4))));
        var number = colony.register(WREN, young);

        wren.check("number,sire", number + ",one of " + two + ":0.4|" + one + ":0.6")
                .body("alreadyKnown", equalTo(1));
        for (var other : List.of(one, one + ":0.6|" + two + ":0.4", "one of " + one + "|" + two, "none")) {
            one(wren.check("number,sire", number + "," + other), "sire", "the register has one of " + one + ":0.6");
        }
    }

    @Test
    void what_only_its_holder_sees_of_an_animal_is_not_compared_for_others() {
        var number = known("Stork");
        var ines = new Sheets(colony, INES);
        ines.check("number,sex,born,origin", number + ",f,2015,wc").body("alreadyKnown", equalTo(1));
        one(ines.check("number,notes", number + ",calm"), "notes", "not in a collection of yours");
        one(ines.check("number,notes", number + ",bites"), "notes", "not in a collection of yours")
                .body(
                        "findings[0].message",
                        equalTo(
                                number
                                        + " is not in a collection of yours; only who holds it says this of it. Leave the cell empty."));
        ines.check("number,id,died,source,chip,marks,collection", number + ",Stork,2020,W,981000000001234,notch,mine")
                .body("errors", equalTo(6));
    }

    private static String known(String reference) {
        var animal = animal("female", "2015-06-01");
        animal.putAll(Map.of(
                "ownReference",
                reference,
                "origin",
                "wild-caught",
                "sourceCode",
                "W",
                "transponders",
                List.of(chipOf(reference)),
                "marks",
                List.of("notch"),
                "notes",
                "calm"));
        return colony.register(WREN, animal);
    }

    private static String chipOf(String reference) {
        return "98100000" + String.format("%07d", Math.floorMod(reference.hashCode(), 10_000_000));
    }

    /** The report has exactly one error, and it is this. */
    private static ValidatableResponse one(ValidatableResponse report, String column, String message) {
        return report.statusCode(200)
                .body("errors", equalTo(1))
                .body("findings.findAll { it.level == 'error' }[0].message", containsString(message))
                .body("findings[0].column", column == null ? nullValue() : equalTo(column));
    }
}
