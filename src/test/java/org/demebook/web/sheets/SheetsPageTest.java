package org.demebook.web.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SheetsPageTest {
    private static final String WRONG =
            "id,sex,born,notes\r\nFern,f,2020-05-01,calm\r\n\r\nMoss,x,2020-05-03,\"big, shy\"";

    Colony colony;

    @BeforeEach
    void found() {
        colony = Colony.found();
    }

    @Test
    void a_wrong_cell_is_a_field_with_what_stands_in_it_and_what_is_wrong() {
        upload(WRONG)
                .statusCode(200)
                .body("**.find { it.@name == 'cell.4.1' }.@value", equalTo("x"))
                .body("**.find { it.@name == 'cell.4.1' }.@'aria-invalid'", equalTo("true"))
                .body(not(containsString("cell.2.1")), not(containsString("/imports?once=")));
    }

    @Test
    void what_is_written_into_a_cell_is_checked_and_all_else_travels_along() {
        var sheet = travelling(upload(WRONG));
        var mended = travelling(browser()
                .formParam("sheet", sheet)
                .formParam("cell.4.1", "m")
                .post(path("/import-checks"))
                .then()
                .statusCode(200)
                .body(not(containsString("cell.4.1")), containsString("/imports?once=")));
        assertThat(mended.replace("\r\n", "\n").strip())
                .isEqualTo("id,sex,born,notes\nFern,f,2020-05-01,calm\n\nMoss,m,2020-05-03,\"big, shy\"");
    }

    @Test
    void a_sheet_that_is_clean_is_imported_once_however_often_it_is_sent() {
        var once = UUID.randomUUID().toString();
        var location = "";
        for (int i = 0; i < 2; i++) {
            location = browser()
                    .formParam("sheet", "id,sex\r\nFern,f\r\nMoss,m")
                    .post(path("/imports?once=" + once))
                    .then()
                    .statusCode(303)
                    .extract()
                    .header("Location");
        }
        awaitDone(location).body(containsString("2 animals are registered."));
        assertThat(colony.get(WREN, "/animals").extract().<Integer>path("items.size()"))
                .isEqualTo(2);
        // nobody else hears of it
        Browsing.as(DOV).get(location).then().statusCode(404);
    }

    @Test
    void a_sheet_with_something_wrong_is_not_imported_and_comes_back_with_all_of_it() {
        browser()
                .formParam("sheet", WRONG)
                .formParam("cell.4.1", "y")
                .post(path("/imports?once=" + UUID.randomUUID()))
                .then()
                .statusCode(422)
                .body("**.find { it.@name == 'cell.4.1' }.@value", equalTo("y"))
                .body(containsString("nothing was imported"));
    }

    @Test
    void a_rule_is_left_as_it_is_with_a_reason_and_without_one_it_is_asked_for() {
        var sheet = "id,dam,born,sex\r\nA,B,2010-06-01,\r\nB,,2010-01-01,f";
        upload(sheet).body(containsString("dam-too-young"), not(containsString("/imports?once=")));
        browser()
                .formParam("sheet", sheet)
                .formParam("leave", "dam-too-young")
                .post(path("/import-checks"))
                .then()
                .statusCode(422)
                .body("**.find { it.@name == 'reason.dam-too-young' }.@'aria-invalid'", equalTo("true"));
        browser()
                .formParam("sheet", sheet)
                .formParam("leave", "dam-too-young")
                .formParam("reason.dam-too-young", "her births are in the book")
                .post(path("/import-checks"))
                .then()
                .statusCode(200)
                .body(containsString("her births are in the book"), containsString("/imports?once="));
    }

    @Test
    void a_row_is_left_out_and_the_others_keep_their_numbers() {
        browser()
                .formParam("sheet", "id,sex\r\nA,f\r\nA,f\r\nB,x")
                .formParam("without", "3")
                .post(path("/import-checks"))
                .then()
                .statusCode(200)
                .body("**.find { it.@name == 'cell.4.1' }.@value", equalTo("x"))
                .body(not(containsString("cell.3.")));
    }

    @Test
    void pasted_rows_are_read_like_a_file_and_nothing_at_all_is_told_at_the_field() {
        browser()
                .multiPart("pasted", "id\tsex\nFern\tf\n")
                .post(path("/import-checks"))
                .then()
                .statusCode(200)
                .body(containsString("Import 1 animal"));
        browser()
                .multiPart("pasted", "")
                .post(path("/import-checks"))
                .then()
                .statusCode(422)
                .body("**.find { it.@name == 'file' }.@'aria-invalid'", equalTo("true"));
    }

    @Test
    void a_long_sheet_travels_and_the_cells_that_are_wrong_are_fields() {
        var sheet = new StringBuilder("id,sex,notes\r\n");
        for (int i = 0; i < 2000; i++) {
            sheet.append("A%d,%s,a note of some length for each\r\n".formatted(i, i % 50 == 7 ? "x" : "f"));
        }
        var again =
                browser().formParam("sheet", travelling(upload(sheet.toString()).statusCode(200)));
        for (int i = 7; i < 2000; i += 50) {
            again.formParam("cell." + (i + 2) + ".1", "m");
        }
        again.post(path("/import-checks")).then().statusCode(200).body(containsString("Import 2000 animals"));
    }

    @Test
    void an_export_is_a_file_with_mine_or_with_what_others_let_me_see() {
        colony.register(WREN, Map.of("sex", "female", "origin", "unknown", "notes", "bites"));
        var others = colony.register(DOV, Map.of("sex", "male", "origin", "unknown", "notes", "shy of the lamp"));
        Browsing.as(WREN)
                .get(path("/export?format=csv&mine=true"))
                .then()
                .statusCode(200)
                .contentType(startsWith("text/csv"))
                .header("Content-Disposition", containsString("attachment"))
                .body(containsString("bites"), not(containsString(others)));
        Browsing.as(WREN)
                .get(path("/export"))
                .then()
                .body(allOf(containsString(others), not(containsString("shy of the lamp"))));
        Browsing.as(WREN).get(path("/sheets/template")).then().body(startsWith("number,reference,dam,sire"));
    }

    private ValidatableResponse upload(String sheet) {
        return browser()
                .multiPart("file", "my snakes.csv", sheet.getBytes(StandardCharsets.UTF_8), "text/csv")
                .post(path("/import-checks"))
                .then();
    }

    /** The sheet as its page carries it, unescaped; a parser of XML would make a space of every line end. */
    private static String travelling(ValidatableResponse page) {
        var carried = Pattern.compile("name=\"sheet\" value=\"([^\"]*)\"")
                .matcher(page.extract().asString());
        assertThat(carried.find()).isTrue();
        return carried.group(1).replace("&quot;", "\"").replace("&#39;", "'").replace("&amp;", "&");
    }

    private ValidatableResponse awaitDone(String location) {
        for (int i = 0; i < 200; i++) {
            var page = Browsing.as(WREN).get(location).then().statusCode(200);
            if (!page.extract().asString().contains("hx-trigger")) {
                return page;
            }
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        throw new AssertionError("the import does not end");
    }

    private static RequestSpecification browser() {
        return Browsing.as(WREN);
    }

    private String path(String below) {
        return "/populations/" + colony.code + below;
    }
}
