package org.demebook.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.anonymous;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SheetCheckTest {
    private Colony colony;
    private Young young;
    private JsonPath sheet;

    @BeforeEach
    void a_sheet_of_a_young_of_wrens() {
        colony = Colony.found();
        young = new Young(colony).reared("taken", "taken");
        sheet = young.issue(WREN, Map.of("kind", "sale", "showName", true))
                .statusCode(201)
                .extract()
                .jsonPath();
    }

    private ValidatableResponse check() {
        return check(sheet.getString("code"));
    }

    private static ValidatableResponse check(String code) {
        return anonymous().get("/sheets/" + code).then();
    }

    private UUID sheetId() {
        return UUID.fromString(sheet.getString("id"));
    }

    @Test
    void whoever_has_the_paper_learns_that_it_is_genuine_without_signing_in() {
        check().statusCode(200)
                .body("genuine", equalTo(true))
                .body("state", equalTo("current"))
                .body("animal", equalTo(young.number))
                .body("dam", equalTo(young.dam))
                .body("sire", equalTo(young.sire))
                .body("digest", equalTo(sheet.getString("digest")))
                .body(
                        "issuedOn",
                        equalTo(ZonedDateTime.parse(sheet.getString("issuedAt"))
                                .withZoneSameInstant(ZoneOffset.UTC)
                                .toLocalDate()
                                .toString()));
    }

    @Test
    void the_link_on_the_sheet_leads_to_the_check() {
        var link = URI.create(sheet.getString("link"));
        assertThat(link.getPath()).isEqualTo("/sheets/" + sheet.getString("code"));
        anonymous().get(link.getPath()).then().statusCode(200).body("genuine", equalTo(true));
    }

    @Test
    void it_learns_no_names_no_places_no_marks_and_no_holder() {
        var pages = check().extract().asString()
                + anonymous()
                        .accept("text/html")
                        .get("/sheets/" + sheet.getString("code"))
                        .asString();
        assertThat(pages)
                .contains(young.number)
                .doesNotContainIgnoringCase("wren")
                .doesNotContain(young.transponder, "broken stripe", "Marrowfin", "pinky", "rack")
                .doesNotContain(sheet.getString("id"), Young.BORN.toString());
    }

    @Test
    void a_browser_gets_a_page() {
        var page = anonymous()
                .header("Accept", "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8")
                .get("/sheets/" + sheet.getString("code"));
        page.then().statusCode(200).contentType("text/html");
        assertThat(Xhtml.parse(page.asString()).getTextContent()).contains("Genuine: " + young.number);
    }

    @Test
    void the_code_may_be_typed_by_hand() {
        var typed = sheet.getString("code").toLowerCase().replace("-", "").replace('0', 'o');
        check(typed).statusCode(200).body("genuine", equalTo(true));
    }

    @Test
    void a_sheet_that_no_longer_says_what_the_register_says_is_told_so() {
        colony.put(WREN, young.number, "/parentage", Map.of("dam", young.dam, "sire", Map.of("kind", "unknown")))
                .statusCode(200);
        check().body("genuine", equalTo(true))
                .body("state", equalTo("outdated"))
                .body("sire", equalTo(young.sire));
    }

    @Test
    void what_only_its_keeper_sees_makes_no_sheet_outdated() {
        colony.put(WREN, young.number, "/death", Map.of("on", Young.TODAY.toString()))
                .statusCode(200);
        check().body("state", equalTo("current"));
    }

    @Test
    void a_later_sheet_supersedes_an_earlier_one_and_a_withdrawn_one_says_so() {
        var later = young.issue(WREN, Map.of("kind", "sale")).extract().jsonPath();
        check().body("state", equalTo("superseded"));
        check(later.getString("code")).body("state", equalTo("current"));
        colony.post(WREN, "/handover-sheets/" + sheetId() + "/withdrawal", Map.of("reason", "a private reason"))
                .statusCode(200);
        check().body("genuine", equalTo(true)).body("state", equalTo("withdrawn"));
        assertThat(check().extract().asString()).doesNotContain("private reason");
    }

    // ── tampering ────────────────────────────────────────────────────────────────────────────────────────────────────

    private String words() {
        return ask(
                        "select convert_from(words, 'UTF8') from demebook.handover_sheet_words where sheet_id = ?",
                        sheetId())
                .get(0);
    }

    private void overwrite(String words) {
        assertThat(change(
                        "update demebook.handover_sheet_words set words = ? where sheet_id = ?",
                        words.getBytes(StandardCharsets.UTF_8),
                        sheetId()))
                .isEqualTo(1);
    }

    private void requireAltered() {
        check().statusCode(200)
                .body("genuine", equalTo(false))
                .body("state", equalTo("altered"))
                .body("dam", nullValue())
                .body("sire", nullValue());
        var path = "/handover-sheets/" + sheetId();
        colony.get(WREN, path).statusCode(200).body("state", equalTo("altered")).body("says", nullValue());
        for (var form : new String[] {".html", ".pdf"}) {
            colony.get(WREN, path + form).statusCode(409).body("type", equalTo("/problems/handover-sheet-altered"));
        }
    }

    @Test
    void one_changed_letter_in_the_database_is_noticed() {
        overwrite(words().replace("\"female\"", "\"femalf\""));
        requireAltered();
    }

    @Test
    void so_is_a_change_of_words_and_digest_together() {
        var changed = words().replace("\"established\":false", "\"established\":true");
        overwrite(changed);
        change(
                "update demebook.handover_sheet set digest = ? where id = ?",
                SheetDigest.of(changed.getBytes(StandardCharsets.UTF_8)),
                sheetId());
        requireAltered();
    }

    @Test
    void and_with_a_code_that_fits_the_paper_leads_nowhere() {
        var changed = words().replace("\"established\":false", "\"established\":true");
        var digest = SheetDigest.of(changed.getBytes(StandardCharsets.UTF_8));
        overwrite(changed);
        change(
                "update demebook.handover_sheet set digest = ?, code = ? where id = ?",
                digest,
                SheetDigest.code(digest),
                sheetId());
        check().statusCode(404).body("type", equalTo("/problems/no-such-handover-sheet"));
    }

    @Test
    void a_sheet_whose_words_are_gone_is_not_called_genuine() {
        change("delete from demebook.handover_sheet_words where sheet_id = ?", sheetId());
        check().statusCode(200).body("genuine", equalTo(false)).body("state", equalTo("erased"));
    }

    // ── guessing ─────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void wrong_codes_from_one_address_are_soon_not_listened_to() {
        for (int i = 0; i < 11; i++) {
            assertThat(anonymous("198.51.100.7")
                            .get("/sheets/0000-0000-0000-00" + (10 + i))
                            .statusCode())
                    .isEqualTo(i < 10 ? 404 : 429);
        }
    }
}
