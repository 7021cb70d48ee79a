package org.demebook.litter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.litter.NewLitters.either;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.outcome;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What is found out about a litter later, and who sees it. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LitterCorrectionTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void one_more_young_that_is_found_next_day_is_registered_like_the_others() {
        var sire = either(colony.male(WREN), colony.male(WREN), true);
        var registered = colony.post(
                        WREN, "/litters", with(litter(colony.female(WREN), "2026-06-29", 11, 1, 2), "sire", sire))
                .statusCode(201);
        String id = registered.extract().path("litter.id");
        List<String> young = registered.extract().path("young.number");

        // 15 = 12 live, 1 stillborn, 2 unfertilised
        correct(WREN, id, outcome(12, 1, 2))
                .statusCode(200)
                .body("litter.liveBorn", equalTo(12))
                .body("litter.ovaFound", equalTo(15))
                .body("litter.young", hasSize(12))
                .body("young", hasSize(1))
                .body("young[0].sire.candidates", hasSize(2))
                .body("young[0].sire.wholeLitter", equalTo(true))
                .body("young[0].litter", equalTo(id));
        assertThat(ask(
                        "select distinct sire_draw_id::text from demebook.animal where litter_id = ?",
                        UUID.fromString(id)))
                .containsExactly(id);
        assertThat(young).doesNotContain((String)
                colony.get(WREN, "/litters/" + id).extract().path("young[11]"));
    }

    @Test
    void a_further_young_is_malformed_when_one_more_is_counted() {
        var id = litterOf(3);
        correct(WREN, id, with(outcome(5, 0, 0), "malformedLive", 1))
                .statusCode(200)
                .body("young.held.malformed", contains(false, true));
    }

    @Test
    void stillborn_and_unfertilised_are_counted_again_without_any_animal() {
        var id = litterOf(3);
        correct(WREN, id, outcome(3, 2, 4))
                .statusCode(200)
                .body("litter.stillborn", equalTo(2))
                .body("young", hasSize(0));
    }

    @Test
    void fewer_live_born_are_refused_with_what_to_do_instead() {
        var id = litterOf(3);
        correct(WREN, id, outcome(2, 1, 0))
                .statusCode(422)
                .body("type", equalTo("/problems/litter-does-not-add-up"))
                .body("detail", containsString("report its death"))
                .body("detail", containsString("declare the two records the same animal"));
    }

    @Test
    void a_correction_that_does_not_add_up_is_refused() {
        var id = litterOf(3);
        correct(WREN, id, with(outcome(3, 0, 0), "ovaFound", 5))
                .statusCode(422)
                .body("type", equalTo("/problems/litter-does-not-add-up"))
                .body("detail", containsString("2 missing. Which?"));
    }

    @Test
    void a_correction_needs_the_revision_that_was_read() {
        var id = litterOf(3);
        var old = etag(WREN, id);
        as(WREN).body(outcome(3, 1, 0))
                .put(colony.path("/litters/" + id + "/outcome"))
                .then()
                .statusCode(428)
                .body("type", equalTo("/problems/revision-missing"));
        correct(WREN, id, outcome(3, 1, 0)).statusCode(200);
        as(WREN).header("If-Match", old)
                .body(outcome(3, 2, 0))
                .put(colony.path("/litters/" + id + "/outcome"))
                .then()
                .statusCode(412)
                .body("type", equalTo("/problems/revision-outdated"));
    }

    @Test
    void a_correction_supersedes_the_entry_before_and_both_stay() {
        var id = litterOf(3);
        correct(WREN, id, outcome(3, 1, 0)).statusCode(200);
        var entries = ask(
                "select convert_from(body, 'UTF8') from demebook.journal_entry"
                        + " where type in ('litter-registered', 'litter-outcome-corrected') and convert_from(body, 'UTF8') like ?"
                        + " order by seq",
                "%" + id + "%");
        assertThat(entries).hasSize(2);
        assertThat(entries.get(1)).contains("\"supersedes\":");
        assertThat(entries.get(0)).contains("\"stillborn\":0");
    }

    @Test
    void to_other_members_there_is_no_such_litter_until_they_hold_the_dam() {
        var dam = colony.female(WREN);
        String id = colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 2), "notes", "restless"))
                .statusCode(201)
                .extract()
                .path("litter.id");
        colony.get(INES, "/litters/" + id).statusCode(404).body("type", equalTo("/problems/no-such-litter"));
        colony.get(INES, "/litters?dam=" + dam).statusCode(200).body("items", hasSize(0));
        as(INES).header("If-Match", "\"1\"")
                .body(outcome(3, 0, 0))
                .put(colony.path("/litters/" + id + "/outcome"))
                .then()
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-litter"));

        String transfer = colony.post(WREN, "/transfers", Map.of("animal", dam, "kind", "sale", "to", INES))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + transfer + "/acceptance", Map.of()).statusCode(200);

        colony.get(INES, "/litters/" + id)
                .statusCode(200)
                .body("liveBorn", equalTo(2))
                .body("notes", equalTo("restless"));
        colony.get(WREN, "/litters/" + id).statusCode(200);
        colony.get(DOV, "/litters/" + id).statusCode(404);
        correct(INES, id, outcome(3, 0, 0)).statusCode(403).body("type", equalTo("/problems/not-allowed"));
        // the young found later is with those that were found at once
        correct(WREN, id, outcome(3, 0, 0)).statusCode(200).body("young[0].held.collection", equalTo(rack(WREN)));
    }

    @Test
    void litters_are_listed_latest_first_page_by_page() {
        var own = Colony.found();
        var dam = own.female(WREN);
        for (var born : List.of("2023-06-29", "2024-06-29", "2025-06-29")) {
            own.post(WREN, "/litters", litter(dam, born, 1)).statusCode(201);
        }
        own.post(WREN, "/litters", litter(own.female(WREN), "2026-06-29", 1)).statusCode(201);

        String next = own.get(WREN, "/litters?limit=2&dam=" + dam)
                .statusCode(200)
                .body("items.born", contains("2025-06-29", "2024-06-29"))
                .extract()
                .path("next");
        own.get(WREN, "/litters?limit=2&dam=" + dam + "&after=" + next)
                .statusCode(200)
                .body("items.born", contains("2023-06-29"))
                .body("next", nullValue());
        own.get(WREN, "/litters").statusCode(200).body("items", hasSize(4));
        own.get(WREN, "/litters?after=bm8").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
        own.get(WREN, "/litters/no-id").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
        own.get(WREN, "/litters?dam=none").statusCode(422).body("type", equalTo("/problems/mistyped-number"));
    }

    private static String litterOf(int liveBorn) {
        return colony.post(WREN, "/litters", litter(colony.female(WREN), "2026-06-29", liveBorn))
                .statusCode(201)
                .extract()
                .path("litter.id");
    }

    private static ValidatableResponse correct(String keeper, String id, Map<String, Object> outcome) {
        return as(keeper)
                .header("If-Match", etag(keeper, id))
                .body(outcome)
                .put(colony.path("/litters/" + id + "/outcome"))
                .then();
    }

    private static String etag(String keeper, String id) {
        return colony.get(keeper, "/litters/" + id).statusCode(200).extract().header("ETag");
    }

    private static String rack(String keeper) {
        return colony.get(keeper, "/collections").extract().path("[0].id");
    }
}
