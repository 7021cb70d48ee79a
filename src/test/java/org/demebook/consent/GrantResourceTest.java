package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.anonymous;
import static org.demebook.Colony.as;
import static org.demebook.consent.ConsentStory.choose;
import static org.demebook.consent.ConsentStory.collection;
import static org.demebook.consent.ConsentStory.give;
import static org.demebook.consent.ConsentStory.grant;
import static org.hamcrest.Matchers.*;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class GrantResourceTest {
    private static final Map<String, Object> MEMBERS = Map.of("kind", "members");

    private Colony colony;

    @BeforeEach
    void found() {
        colony = Colony.foundPrivate();
    }

    @Test
    void a_grant_is_given_for_24_months_when_nothing_else_is_said() {
        var latest = OffsetDateTime.now(ZoneOffset.UTC).plusMonths(24).toInstant();
        var animal = colony.female(WREN);
        var grant = grant(Map.of("kind", "keeper", "name", INES));
        grant.put("animals", List.of(animal));
        grant.put("conditions", "please tell me what you find");

        String until = colony.post(WREN, "/grants", grant)
                .statusCode(201)
                .body("state", equalTo("live"))
                .body("givenBy", equalTo(WREN))
                .body("recipient.name", equalTo(INES))
                .body("animals", contains(animal))
                .body("fieldGroups", contains("identity", "parentage"))
                .body("conditions", equalTo("please tell me what you find"))
                .extract()
                .path("until");

        assertThat(Instant.parse(until)).isBetween(latest, latest.plusSeconds(60));
    }

    @Test
    void grants_are_seen_by_the_keepers_of_the_collection_alone() {
        var id = give(colony, WREN, grant(MEMBERS));
        colony.get(WREN, "/grants/" + id).statusCode(200);
        for (var other : List.of(INES, DOV)) {
            colony.get(other, "/grants/" + id).statusCode(404).body("type", equalTo("/problems/no-such-grant"));
            colony.get(other, "/grants/" + id + "/receipt").statusCode(404);
            colony.post(other, "/grants/" + id + "/withdrawal", "{}").statusCode(404);
            colony.post(other, "/grants/" + id + "/renewal", "{}").statusCode(404);
            colony.get(other, "/grants").statusCode(200).body("items", empty());
        }
        colony.get(OUTSIDER, "/grants/" + id).statusCode(404).body("type", equalTo("/problems/no-such-population"));
    }

    @Test
    void any_keeper_of_the_household_may_withdraw_what_another_gave() {
        String household = colony.post(WREN, "/collections", Map.of("label", "both of us", "sharedWith", List.of(DOV)))
                .statusCode(201)
                .extract()
                .path("id");
        var grant = grant(MEMBERS);
        grant.put("collection", household);
        var id = give(colony, WREN, grant);

        colony.post(DOV, "/grants/" + id + "/withdrawal", "{}")
                .statusCode(200)
                .body("state", equalTo("withdrawn"))
                .body("givenBy", equalTo(WREN));
        colony.get(DOV, "/grants/" + id + "/receipt").body("events[1].by", equalTo(DOV));
    }

    @Test
    void what_was_withdrawn_stays_so_and_is_no_error_a_second_time() {
        var id = give(colony, INES, grant(MEMBERS));
        String at = colony.post(INES, "/grants/" + id + "/withdrawal", "{}")
                .statusCode(200)
                .extract()
                .path("withdrawnAt");
        colony.post(INES, "/grants/" + id + "/withdrawal", "{}").statusCode(200).body("withdrawnAt", equalTo(at));
        colony.post(INES, "/grants/" + id + "/renewal", "{}")
                .statusCode(409)
                .body("type", equalTo("/problems/grant-ended"));
    }

    @Test
    void a_grant_that_ends_soon_is_found_and_renewed_in_one_step() {
        var soon = grant(MEMBERS);
        soon.put("until", Instant.now().plusSeconds(20 * 86_400).toString());
        var id = give(colony, INES, soon);
        give(colony, INES, grant(MEMBERS));
        colony.get(INES, "/grants?endWithinDays=30").body("items.id", contains(id));

        String renewed = colony.post(INES, "/grants/" + id + "/renewal", "{}")
                .statusCode(200)
                .body("renews", equalTo(id))
                .body("state", equalTo("live"))
                .extract()
                .path("id");

        colony.get(INES, "/grants?endWithinDays=30").body("items", empty());
        colony.get(INES, "/grants/" + id).body("state", equalTo("superseded"));
        colony.get(INES, "/grants?state=superseded").body("items.id", contains(id));
        colony.get(INES, "/grants/" + renewed + "/receipt").body("header.status", equalTo("dpv:RenewedConsentGiven"));
    }

    @Test
    void what_ends_soon_is_a_care_task_and_one_choice_is_one_task() {
        var soon = grant(MEMBERS);
        soon.put("until", Instant.now().plusSeconds(20 * 86_400).toString());
        var id = give(colony, INES, soon);
        choose(colony, INES, "open-pedigree");
        var renewals = "items.findAll { it.kind == 'grant-renewal' }";
        colony.get(INES, "/care-tasks?until=" + LocalDate.now(ZoneOffset.UTC).plusDays(60))
                .body(renewals + ".key", contains("grant-renewal:" + id));
        change(
                "update demebook.consent_grant set until_at = until_at - interval '23 months 10 days' where choice is not"
                        + " null and collection_id = ?",
                UUID.fromString(collection(colony, INES)));
        colony.get(INES, "/care-tasks?until=" + LocalDate.now(ZoneOffset.UTC).plusDays(60))
                .body(renewals, hasSize(2));
        colony.post(INES, "/grants/" + id + "/renewal", "{}").statusCode(200);
        choose(colony, INES, "open-pedigree");
        colony.get(INES, "/care-tasks?until=" + LocalDate.now(ZoneOffset.UTC).plusDays(60))
                .body(renewals, empty());
    }

    @Test
    void a_grant_that_has_run_out_can_be_renewed_once() {
        var id = give(colony, INES, grant(MEMBERS));
        change(
                "update demebook.consent_grant set from_at = from_at - interval '3 years', until_at = until_at"
                        + " - interval '3 years' where id = ?",
                UUID.fromString(id));
        colony.get(INES, "/grants/" + id).body("state", equalTo("expired"));
        colony.post(INES, "/grants/" + id + "/withdrawal", "{}")
                .statusCode(409)
                .body("type", equalTo("/problems/grant-ended"));
        colony.post(INES, "/grants/" + id + "/renewal", "{}").statusCode(200);
        colony.post(INES, "/grants/" + id + "/renewal", "{}").statusCode(409);
        colony.get(INES, "/grants?state=live").body("items", hasSize(1));
    }

    @Test
    void a_grant_that_begins_later_is_not_live_yet() {
        var later = grant(MEMBERS);
        later.put("from", Instant.now().plusSeconds(86_400).toString());
        colony.post(WREN, "/grants", later).statusCode(201).body("state", equalTo("not-yet"));
    }

    @Test
    void the_list_comes_in_pages_the_latest_first() {
        var first = give(colony, WREN, grant(MEMBERS));
        var second = give(colony, WREN, grant(MEMBERS));
        var third = give(colony, WREN, grant(MEMBERS));
        String next = colony.get(WREN, "/grants?limit=2")
                .body("items.id", contains(third, second))
                .extract()
                .path("next");
        colony.get(WREN, "/grants?limit=2&after=" + next).body("items.id", contains(first));
    }

    // ── what is refused, naming the field; nothing is stored ─────────────────────────────────────────────────────────

    @Test
    void a_grant_to_nobody_is_refused() {
        refused(grant(Map.of("kind", "keeper")), "grant-to-nobody", "recipient.name");
        refused(grant(Map.of("kind", "node")), "grant-to-nobody", "recipient.node");
        refused(grant(Map.of("kind", "members", "name", INES)), "grant-to-nobody", "recipient.name");
        refused(grant(Map.of("kind", "public", "node", "K")), "grant-to-nobody", "recipient.node");
        refused(grant(Map.of("kind", "keeper", "name", WREN)), "grant-to-nobody", "recipient.name");
        refused(grant(Map.of("kind", "keeper", "name", OUTSIDER)), "no-such-keeper", "recipient.name");
        refused(grant(null), "invalid-values", "recipient");
    }

    @Test
    void a_window_that_ends_before_it_starts_or_lasts_too_long_is_refused() {
        var now = Instant.now();
        refused(window(now.plusSeconds(7200), now.plusSeconds(3600)), "grant-period-not-possible", "until");
        refused(window(now.plusSeconds(3600), now.plusSeconds(3600)), "grant-period-not-possible", "until");
        refused(window(null, now.minusSeconds(3600)), "grant-period-not-possible", "until");
        refused(window(null, now.plusSeconds(735L * 86_400)), "grant-period-not-possible", "until");
        refused(window(now.plusSeconds(800L * 86_400), null), "grant-period-not-possible", "from");
    }

    @Test
    void a_scope_with_somebody_elses_animal_is_refused_in_the_words_for_one_that_does_not_exist() {
        var own = colony.female(WREN);
        var foreign = colony.female(INES);
        var scope = grant(MEMBERS);
        scope.put("animals", List.of(own, foreign));
        var ofForeign = refused(scope, "animal-not-in-collection", "animals[1]");
        scope.put("animals", List.of(own, "MC-H-9999-X"));
        var ofNone = refused(scope, "animal-not-in-collection", "animals[1]");
        assertThat(ofForeign.replace(foreign, "…")).isEqualTo(ofNone.replace("MC-H-9999-X", "…"));
    }

    @Test
    void an_unknown_field_group_is_refused() {
        var unknown = grant(MEMBERS);
        unknown.put("fieldGroups", List.of("identity", "prices"));
        refused(unknown, "invalid-values", "fieldGroups[1]");
        unknown.put("fieldGroups", List.of());
        refused(unknown, "invalid-values", "fieldGroups");
    }

    @Test
    void everything_that_is_wrong_is_told_at_once() {
        var wrong = window(null, Instant.now().minusSeconds(60));
        wrong.put("recipient", Map.of("kind", "keeper", "name", OUTSIDER));
        wrong.put("animals", List.of(colony.female(INES)));
        var before = stored();
        colony.post(WREN, "/grants", wrong)
                .statusCode(422)
                .body("findings.field", contains("recipient.name", "animals[0]", "until"));
        assertThat(stored()).isEqualTo(before);
    }

    @Test
    void a_grant_is_given_for_a_collection_of_ones_own() {
        var foreign = grant(MEMBERS);
        foreign.put("collection", collection(colony, INES));
        var before = stored();
        colony.post(WREN, "/grants", foreign).statusCode(422).body("type", equalTo("/problems/no-such-collection"));
        as(WREN).body(Map.of("choice", "private"))
                .put(colony.path("/collections/" + collection(colony, INES) + "/sharing"))
                .then()
                .statusCode(422);
        assertThat(stored()).isEqualTo(before);
    }

    private static Map<String, Object> window(Instant from, Instant until) {
        var grant = grant(MEMBERS);
        if (from != null) {
            grant.put("from", from.toString());
        }
        if (until != null) {
            grant.put("until", until.toString());
        }
        return grant;
    }

    private String refused(Map<String, Object> grant, String type, String field) {
        var before = stored();
        var detail = colony.post(WREN, "/grants", grant)
                .statusCode(422)
                .body("type", equalTo("/problems/" + type))
                .body("findings.field", contains(field))
                .extract()
                .<String>path("detail");
        colony.post(WREN, "/grants/preview", Map.of("grant", grant)).statusCode(422);
        assertThat(stored()).isEqualTo(before);
        return detail;
    }

    /** How many grants there are, and how many facts of anything. */
    private List<String> stored() {
        return ask(
                "select (select count(*) from demebook.consent_grant g where g.population_id = h.population_id) || ' of '"
                        + " || h.seq from demebook.journal_head h where h.code = ?",
                colony.code);
    }

    // ── ready choices ────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_fresh_collection_shares_nothing() {
        colony.get(WREN, "/collections/" + collection(colony, WREN) + "/sharing")
                .statusCode(200)
                .body("choice", nullValue())
                .body("grants", empty());
    }

    @Test
    void a_ready_choice_replaces_the_earlier_one_and_leaves_what_was_written_by_hand() {
        give(colony, WREN, grant(MEMBERS));
        choose(colony, WREN, "open-pedigree");
        colony.get(WREN, "/grants?state=live").body("items", hasSize(7));
        choose(colony, WREN, "compute-only");
        colony.get(WREN, "/collections/" + collection(colony, WREN) + "/sharing")
                .body("choice", equalTo("compute-only"))
                .body("grants", hasSize(2))
                .body("grants.actions.flatten()", not(hasItem("read")))
                .body("otherGrants", equalTo(1));
        colony.get(WREN, "/grants?state=superseded").body("items", hasSize(6));
        choose(colony, WREN, "private");
        colony.get(WREN, "/grants?state=live").body("items", hasSize(1)).body("items[0].choice", nullValue());
    }

    // ── the effect before it is saved ────────────────────────────────────────────────────────────────────────────────

    @Test
    void the_preview_says_who_would_see_what_of_how_many_animals_and_saves_nothing() {
        var one = colony.female(WREN);
        colony.female(WREN);
        colony.male(WREN);
        var sharing = grant(Map.of("kind", "keeper", "name", INES));
        sharing.put("animals", List.of(one));
        var toIt =
                "lines.find { it.recipient.kind == 'keeper' && it.purpose == 'pedigree-view' && it.action == 'read' }";
        colony.post(WREN, "/grants/preview", Map.of("grant", sharing))
                .statusCode(200)
                .body("animals", equalTo(3))
                .body("lines", hasSize(1))
                .body(toIt + ".recipient.name", equalTo(INES))
                .body(toIt + ".fieldGroups", contains("identity", "parentage"))
                .body(toIt + ".animalsBefore", equalTo(0))
                .body(toIt + ".animalsAfter", equalTo(1));
        colony.get(WREN, "/grants").body("items", empty());

        give(colony, WREN, sharing);
        sharing.put("animals", List.of(colony.male(WREN)));
        colony.post(WREN, "/grants/preview", Map.of("grant", sharing))
                .body(toIt + ".animalsBefore", equalTo(1))
                .body(toIt + ".animalsAfter", equalTo(2));
    }

    @Test
    void the_preview_of_a_choice_shows_what_it_takes_away() {
        colony.female(WREN);
        choose(colony, WREN, "open-pedigree");
        var publicly =
                "lines.find { it.recipient.kind == 'public' && it.purpose == 'pedigree-view' && it.action == 'read' }";
        colony.post(WREN, "/grants/preview", Map.of("choice", "private"))
                .statusCode(200)
                .body(publicly + ".animalsBefore", equalTo(1))
                .body(publicly + ".animalsAfter", equalTo(0))
                .body("lines.findAll { it.animalsAfter > 0 }", empty());
        colony.post(WREN, "/grants/preview", Map.of()).statusCode(422);
    }

    @Test
    void of_an_animal_in_which_another_has_a_say_nothing_is_shared_until_both_grant_it() {
        var animal = colony.female(WREN);
        String loan = colony.post(WREN, "/transfers", Map.of("animal", animal, "kind", "breeding-loan", "to", INES))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + loan + "/acceptance", Map.of("collection", collection(colony, INES)))
                .statusCode(200);

        colony.post(WREN, "/grants/preview", Map.of("choice", "open-pedigree"))
                .body("animals", equalTo(1))
                .body("lines", empty());
        choose(colony, INES, "open-pedigree");
        colony.post(WREN, "/grants/preview", Map.of("choice", "open-pedigree"))
                .body("lines", not(empty()))
                .body("lines.animalsBefore.max()", equalTo(0))
                .body("lines.animalsAfter.max()", equalTo(1));
    }

    // ── the receipt ──────────────────────────────────────────────────────────────────────────────────────────────────

    /**
     * The four sections of ISO/IEC TS 27560:2023 and the terms of the W3C DPV, as the final community group report of 1 August
     * 2024 has them (https://w3id.org/dpv/guides/consent-27560); actions as in ODRL 2.2 (http://www.w3.org/ns/odrl/2/).
     */
    @Test
    void a_receipt_has_the_four_sections_and_tells_each_event() {
        var id = give(colony, WREN, grant(Map.of("kind", "node", "node", "K")));
        colony.get(WREN, "/grants/" + id + "/receipt")
                .statusCode(200)
                .body("keySet()", containsInAnyOrder("header", "processing", "parties", "events"))
                .body("header.recordId", equalTo(id))
                .body("header.principal", equalTo(WREN))
                .body("header.status", equalTo("dpv:ConsentGiven"))
                .body("processing.legalBasis", equalTo("dpv:ExplicitlyExpressedConsent"))
                .body("processing.purposes.word", contains("pedigree-view"))
                .body("processing.operations.odrl", contains("odrl:read"))
                .body("processing.dataCategories", contains("identity", "parentage"))
                .body("parties.role", contains("dpv:DataSubject", "dpv:DataController", "dpv:Recipient"))
                .body("parties[2].name", equalTo("K"))
                .body("events.state", contains("dpv:ConsentGiven"));
        colony.post(WREN, "/grants/" + id + "/withdrawal", "{}").statusCode(200);
        colony.get(WREN, "/grants/" + id + "/receipt")
                .body("header.status", equalTo("dpv:ConsentWithdrawn"))
                .body("events.state", contains("dpv:ConsentGiven", "dpv:ConsentWithdrawn"));
    }

    @Test
    void the_notice_that_a_grant_names_can_be_read_without_signing_in() {
        String version = anonymous()
                .get("/api/v1/consent-notice")
                .then()
                .statusCode(200)
                .body("text", containsString("withdraw"))
                .extract()
                .path("version");
        colony.get(WREN, "/grants/" + give(colony, WREN, new HashMap<>(grant(MEMBERS))))
                .body("noticeVersion", equalTo(version));
    }
}
