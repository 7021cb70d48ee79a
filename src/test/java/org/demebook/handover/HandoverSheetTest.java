package org.demebook.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class HandoverSheetTest {
    private static final Map<String, Object> SALE = Map.of("kind", "sale");

    private Colony colony;
    private Young young;

    @BeforeEach
    void a_young_of_wrens() {
        colony = Colony.found();
        young = new Young(colony);
    }

    // ── what it says ─────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_sheet_says_who_the_animal_is_and_of_whom_by_number() {
        young.issue(WREN, SALE)
                .statusCode(201)
                .body("animal", equalTo(young.number))
                .body("state", equalTo("current"))
                .body("says.identity.number", equalTo(young.number))
                .body("says.identity.taxon", equalTo("insular dwarf Boa"))
                .body("says.identity.locality", equalTo("Marrowfin Cay"))
                .body("says.identity.born", equalTo(Young.BORN.toString()))
                .body("says.identity.sex", equalTo("female"))
                .body("says.identity.dam", equalTo(young.dam))
                .body("says.identity.sire.animal", equalTo(young.sire))
                .body("says.kind", equalTo("sale"));
    }

    @Test
    void transponder_and_marks_are_whole_and_the_givers_own_reference_is_not_there() {
        young.issue(WREN, SALE)
                .statusCode(201)
                .body("says.marks.kind", contains("mark", "transponder"))
                .body("says.marks.value", contains(Young.MARK, young.transponder));
    }

    /** Dam and sire are unrelated and the sire is a founder: F = 0, half of its genome is the sire's. */
    @Test
    void its_figures_come_from_the_register_founders_by_number() {
        young.issue(WREN, SALE)
                .statusCode(201)
                .body("says.figures.inbreedingCoefficient", equalTo(0f))
                .body("says.figures.knownAncestry", equalTo(0.5f))
                .body("says.figures.founders", hasSize(1))
                .body("says.figures.founders[0].animal", equalTo(young.sire))
                .body("says.figures.founders[0].contribution", equalTo(0.5f));
    }

    /** Scenario B1: 60 days old, one shed, four meals in a row taken alone, the last one four days ago. */
    @Test
    void a_young_that_the_readiness_check_finds_established_is_called_so() {
        young.reared("taken", "taken", "taken", "taken")
                .issue(WREN, SALE)
                .statusCode(201)
                .body("says.rearing.established", equalTo(true))
                .body("says.rearing.notEstablished", hasSize(0))
                .body("says.rearing.mealsInARow", equalTo(4))
                .body("says.rearing.meals", hasSize(4))
                .body(
                        "says.rearing.meals[0].on",
                        equalTo(Young.TODAY.minusDays(4).toString()))
                .body("says.rearing.sheds.on", contains(Young.BORN.plusDays(10).toString()))
                .body("says.rearing.firstMeasures.massGrams", equalTo(28.4f))
                .body("says.rearing.lastMeasures.massGrams", equalTo(41))
                .body("says.rearing.tests[0].agent", equalTo("reptarenavirus"))
                .body("says.rearing.tests[0].result", equalTo("negative"));
    }

    /** Scenario B2: the last two meals were assisted. */
    @Test
    void one_that_was_helped_to_its_last_meals_is_called_not_established_with_the_reason() {
        young.reared("taken", "taken", "taken", "taken", "assisted", "assisted")
                .issue(WREN, SALE)
                .statusCode(201)
                .body("says.rearing.established", equalTo(false))
                .body("says.rearing.mealsInARow", equalTo(0))
                .body("says.rearing.notEstablished", hasSize(1))
                .body("says.rearing.notEstablished[0]", containsString("0"));
    }

    @Test
    void the_last_ten_meals_are_told_and_no_more() {
        young.reared(
                        "refused",
                        "taken",
                        "taken",
                        "taken",
                        "taken",
                        "taken",
                        "taken",
                        "taken",
                        "assisted",
                        "taken",
                        "taken")
                .issue(WREN, SALE)
                .statusCode(201)
                .body("says.rearing.meals", hasSize(10))
                .body("says.rearing.meals[2].outcome", equalTo("assisted"))
                .body("says.rearing.meals.outcome.findAll { it == 'refused' }", hasSize(0))
                .body("says.rearing.mealsInARow", equalTo(2));
    }

    @Test
    void health_notes_and_tubs_stay_behind() {
        var sheet = young.reared("taken")
                .issue(WREN, SALE)
                .statusCode(201)
                .extract()
                .asString();
        assertThat(sheet).doesNotContain("secret worry", "rack 3");
    }

    /** Scenario B7. */
    @Test
    void the_young_of_a_wild_caught_dam_may_not_count_as_captive_bred() {
        new Young(colony, "wild-caught")
                .issue(WREN, SALE)
                .statusCode(201)
                .body("says.source.recorded", equalTo("F"))
                .body("says.source.hint", containsString("May not count as captive bred"))
                .body("says.source.hint", containsString("Ask your authority"));
    }

    @Test
    void its_giver_is_named_only_where_they_ask_for_it() {
        young.issue(WREN, SALE).body("says.givenBy", equalTo("a keeper of this register"));
        young.issue(WREN, Young.with(SALE, "showName", true)).body("says.givenBy", equalTo("Keeper wren"));
    }

    @Test
    void the_quarantine_is_that_of_the_profile() {
        young.issue(WREN, SALE)
                .body(
                        "says.notes.about",
                        contains("Quarantine", "Please report back", "Salmonella", "Veterinarian", "Law", "Transport"))
                .body("says.notes[0].text", containsString("90 days"));
    }

    // ── who issues it, and how ───────────────────────────────────────────────────────────────────────────────────────

    @Test
    void only_who_holds_the_animal_issues_its_sheet() {
        young.issue(INES, SALE).statusCode(403).body("type", equalTo("/problems/not-your-animal"));
        young.issue(OUTSIDER, SALE).statusCode(404).body("type", equalTo("/problems/no-such-population"));
    }

    @Test
    void without_a_transfer_the_giver_says_how_it_changes_hands() {
        young.issue(WREN, Map.of())
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"))
                .body("detail", containsString("breeding-loan"));
    }

    @Test
    void in_a_transfer_the_sheet_says_what_the_transfer_says() {
        young.transferTo(INES);
        young.issue(WREN, Map.of()).statusCode(201).body("says.kind", equalTo("sale"));
        young.issue(WREN, Map.of("kind", "gift"))
                .statusCode(422)
                .body("detail", containsString("in a transfer as sale"));
    }

    @Test
    void who_handed_an_animal_out_still_issues_its_sheet_and_nobody_else() {
        colony.post(WREN, "/transfers", Map.of("animal", young.number, "kind", "gift", "withClaimCode", true))
                .statusCode(201);
        young.issue(WREN, Map.of()).statusCode(201).body("says.kind", equalTo("gift"));
        young.issue(DOV, Map.of()).statusCode(403).body("type", equalTo("/problems/not-your-animal"));
    }

    @Test
    void there_is_no_sheet_of_a_dead_animal() {
        colony.put(WREN, young.number, "/death", Map.of("on", Young.TODAY.toString()))
                .statusCode(200);
        young.issue(WREN, SALE).statusCode(409).body("type", equalTo("/problems/animal-dead"));
    }

    // ── who reads it ─────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void to_other_members_there_is_no_such_sheet() {
        var sheet = young.issued(WREN);
        for (var form : List.of("", ".html", ".pdf")) {
            colony.get(WREN, sheet + form).statusCode(200);
            colony.get(DOV, sheet + form).statusCode(404).body("type", equalTo("/problems/no-such-handover-sheet"));
        }
        colony.post(DOV, sheet + "/withdrawal", Map.of())
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-handover-sheet"));
        colony.get(DOV, "/animals/" + young.number + "/handover-sheets")
                .statusCode(200)
                .body("items", hasSize(0));
        var nothing = colony.get(DOV, "/handover-sheets/" + UUID.randomUUID()).extract();
        assertThat(colony.get(DOV, sheet).extract().<String>path("title")).isEqualTo(nothing.path("title"));
    }

    @Test
    void giver_and_receiver_read_it_before_and_after_the_transfer() {
        var sheet = young.issued(WREN);
        var transfer = young.transferTo(INES);
        colony.get(INES, sheet).statusCode(200);
        colony.post(INES, "/transfers/" + transfer + "/acceptance", Map.of()).statusCode(200);
        colony.get(INES, sheet).statusCode(200).body("says.identity.dam", equalTo(young.dam));
        colony.get(WREN, sheet).statusCode(200);
        colony.get(INES, sheet + ".pdf").statusCode(200);
        colony.get(DOV, sheet).statusCode(404);

        String on = colony.post(INES, "/transfers", Map.of("animal", young.number, "kind", "sale", "to", DOV))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(DOV, "/transfers/" + on + "/acceptance", Map.of()).statusCode(200);
        for (var keeper : List.of(WREN, INES, DOV)) {
            colony.get(keeper, sheet).statusCode(200);
        }
    }

    @Test
    void who_refused_the_animal_reads_its_sheet_no_longer() {
        var sheet = young.issued(WREN);
        var transfer = young.transferTo(INES);
        colony.post(INES, "/transfers/" + transfer + "/refusal", Map.of()).statusCode(200);
        colony.get(INES, sheet).statusCode(404);
    }

    @Test
    void who_had_the_animal_once_does_not_read_what_is_issued_later() {
        var first = young.transferTo(INES);
        colony.post(INES, "/transfers/" + first + "/acceptance", Map.of()).statusCode(200);
        String back = colony.post(INES, "/transfers", Map.of("animal", young.number, "kind", "sale", "to", WREN))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(WREN, "/transfers/" + back + "/acceptance", Map.of()).statusCode(200);
        colony.get(INES, young.issued(WREN)).statusCode(404);
    }

    @Test
    void the_sheets_of_an_animal_are_listed_the_latest_first() {
        var first = young.issued(WREN);
        var second = young.issued(WREN);
        colony.get(WREN, "/animals/" + young.number + "/handover-sheets")
                .statusCode(200)
                .body("items.id.collect { '/handover-sheets/' + it }", contains(second, first))
                .body("items.state", contains("current", "superseded"));
    }

    // ── that it stays what it is ─────────────────────────────────────────────────────────────────────────────────────

    /** Recomputed with the JDK from the answer itself, brought into the form of RFC 8785 by its reference library. */
    @Test
    void the_digest_is_that_of_what_the_sheet_says() throws IOException, NoSuchAlgorithmException {
        var sheet = new ObjectMapper()
                .readTree(young.reared("taken").issue(WREN, SALE).extract().asString());
        var canonical = new JsonCanonicalizer(sheet.get("says").toString()).getEncodedUTF8();
        assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(canonical)))
                .isEqualTo(sheet.get("digest").asText());
    }

    @Test
    void a_sheet_stays_as_it_was_when_the_register_learns_more() {
        var sheet = young.issued(WREN);
        var before = colony.get(WREN, sheet).extract();
        colony.put(WREN, young.number, "/sex", Map.of("sex", "male")).statusCode(200);
        colony.get(WREN, sheet)
                .statusCode(200)
                .body("state", equalTo("outdated"))
                .body("digest", equalTo(before.path("digest")))
                .body("says.identity.sex", equalTo("female"));
    }

    @Test
    void only_its_issuer_withdraws_it_and_it_stays_withdrawn() {
        var sheet = young.issued(WREN);
        colony.post(INES, "/transfers/" + young.transferTo(INES) + "/acceptance", Map.of())
                .statusCode(200);
        colony.post(INES, sheet + "/withdrawal", Map.of())
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"));
        for (int i = 0; i < 2; i++) {
            colony.post(WREN, sheet + "/withdrawal", Map.of("reason", "wrong tub"))
                    .statusCode(200)
                    .body("state", equalTo("withdrawn"))
                    .body("reason", equalTo("wrong tub"));
        }
        colony.get(INES, sheet).body("state", equalTo("withdrawn"));
    }

    @Test
    void a_withdrawn_sheet_supersedes_nothing() {
        var first = young.issued(WREN);
        colony.post(WREN, young.issued(WREN) + "/withdrawal", Map.of()).statusCode(200);
        colony.get(WREN, first).body("state", equalTo("current"));
    }

    @Test
    void the_journal_holds_its_digest_and_no_name() {
        var issued = young.issue(WREN, Young.with(SALE, "showName", true)).extract();
        var facts = ask(
                "select convert_from(body, 'UTF8') from demebook.journal_entry where type = 'sheet-issued'"
                        + " and convert_from(body, 'UTF8') like ?",
                "%" + issued.path("id") + "%");
        assertThat(facts).hasSize(1);
        assertThat(facts.get(0)).contains(issued.<String>path("digest")).doesNotContain("Keeper wren", young.number);
    }

    @Test
    void a_sheet_sent_twice_is_issued_once() {
        var key = UUID.randomUUID().toString();
        var first = as(WREN, key).body(SALE).post(colony.path("/animals/" + young.number + "/handover-sheets"));
        var again = as(WREN, key).body(SALE).post(colony.path("/animals/" + young.number + "/handover-sheets"));
        assertThat(again.<String>path("id")).isEqualTo(first.path("id"));
        colony.get(WREN, "/animals/" + young.number + "/handover-sheets")
                .body("items", hasSize(1))
                .body("items[0].withdrawnAt", nullValue());
    }
}
