package org.demebook.web.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.Test;

/** The pages of an animal, as its keeper sees them and as others do. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class AnimalPageTest {
    private static ValidatableResponse page(Colony colony, String keeper, String below) {
        return Browsing.as(keeper).get("/populations/" + colony.code + below).then();
    }

    private static ValidatableResponse search(Colony colony, String keeper, String words) {
        return Browsing.as(keeper)
                .queryParam("q", words)
                .get("/populations/" + colony.code + "/search")
                .then();
    }

    private static ValidatableResponse send(Colony colony, String keeper, String below, Map<String, ?> form) {
        return Browsing.as(keeper)
                .formParams(form)
                .post("/populations/" + colony.code + below)
                .then();
    }

    private static String once(String below) {
        return below + "?once=" + UUID.randomUUID();
    }

    /** The revision that a form was opened with. */
    private static String revision(Colony colony, String keeper, String below) {
        var html = page(colony, keeper, below).statusCode(200).extract().asString();
        var found = Pattern.compile("name=\"revision\" value=\"(\\d+)\"").matcher(html);
        assertThat(found.find()).as(html).isTrue();
        return found.group(1);
    }

    private static String tagged(Colony colony, String keeper, String reference, String transponder) {
        var animal = Colony.animal("female", "2020-06-01");
        animal.put("ownReference", reference);
        animal.put("transponders", List.of(transponder));
        animal.put("notes", "bites when it smells gulls");
        return colony.register(keeper, animal);
    }

    // ── what is shown ────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void who_holds_it_sees_all_of_it_and_others_what_was_granted() {
        var colony = Colony.found();
        var number = tagged(colony, WREN, "Sea grape", "941000024680301");
        page(colony, WREN, "/animals/" + number)
                .statusCode(200)
                .body(
                        containsString("Sea grape"),
                        containsString("941000024680301"),
                        containsString("bites when it smells gulls"),
                        containsString("/animals/" + number + "/parentage"));
        page(colony, INES, "/animals/" + number)
                .statusCode(200)
                .body(
                        containsString(number),
                        not(containsString("Sea grape")),
                        not(containsString("941000024680301")),
                        not(containsString("bites when")),
                        not(containsString("/parentage\"")));
    }

    @Test
    void what_is_hidden_answers_like_what_is_not_there() {
        var colony = Colony.foundPrivate();
        var hidden = colony.female(DOV);
        for (var below : List.of("", "/ancestry", "/kinship", "/breeding-hold")) {
            page(colony, INES, "/animals/" + hidden + below).statusCode(404).body(containsString("No animal of"));
        }
        page(colony, INES, "/animals?which=all").statusCode(200).body(not(containsString(hidden)));
    }

    @Test
    void the_list_shows_the_living_of_mine_unless_others_are_asked_for() {
        var colony = Colony.found();
        var mine = colony.female(WREN);
        var other = colony.male(INES);
        var dead = Colony.animal("male", "2015-07-01");
        dead.put("died", "2020-01-09");
        var gone = colony.register(WREN, dead);
        page(colony, WREN, "/animals")
                .statusCode(200)
                .body(containsString(mine), not(containsString(other)), not(containsString(gone)));
        page(colony, WREN, "/animals?which=all&state=both")
                .body(containsString(mine), containsString(other), containsString(gone));
        page(colony, WREN, "/animals?which=all&sex=female").body(containsString(mine), not(containsString(other)));
    }

    @Test
    void ancestors_that_are_not_shown_are_said_to_be_not_shown_and_not_to_be_unknown() {
        var colony = Colony.foundPrivate();
        var dam = colony.female(DOV);
        var sire = colony.male(DOV);
        var bred = colony.young(DOV, "female", "2024-06-01", dam, sire);
        colony.post(
                        DOV,
                        "/grants",
                        Map.of(
                                "recipient", Map.of("kind", "members"),
                                "fieldGroups", List.of("identity"),
                                "purposes", List.of("pedigree-view"),
                                "actions", List.of("read"),
                                "animals", List.of(bred)))
                .statusCode(201);
        page(colony, INES, "/animals/" + bred + "/ancestry")
                .statusCode(200)
                .body(containsString("not shown"), not(containsString(dam)), not(containsString(sire)));
        page(colony, DOV, "/animals/" + bred + "/ancestry")
                .statusCode(200)
                .body(containsString(dam), containsString(sire), not(containsString("not shown")));
    }

    @Test
    void a_chart_is_drawn_as_deep_as_it_was_asked_for() {
        var colony = Colony.found();
        var first = colony.female(WREN);
        var second = colony.young(WREN, "female", "2022-06-01", first, colony.male(WREN));
        var third = colony.young(WREN, "female", "2024-06-01", second, colony.male(WREN));
        var fourth = colony.young(WREN, "female", "2026-06-01", third, colony.male(WREN));
        page(colony, WREN, "/animals/" + fourth + "/ancestry?generations=2")
                .body(containsString("<svg"), containsString(second), not(containsString(first)));
        page(colony, WREN, "/animals/" + fourth + "/ancestry?generations=3").body(containsString(first));
    }

    @Test
    void kinship_is_told_as_a_number_as_a_fraction_and_by_the_way_it_runs() {
        var colony = Colony.found();
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        var one = colony.young(WREN, "female", "2024-06-01", dam, sire);
        var sister = colony.young(WREN, "female", "2025-06-01", dam, sire);
        var strange = colony.male(INES);
        page(colony, WREN, "/animals/" + one + "/kinship?with=" + strange)
                .statusCode(200)
                .body(containsString(sister), containsString("1/4"), containsString("0.2500"))
                .body(containsString("no common ancestor is known"));
        page(colony, WREN, "/animals/" + one + "/kinship?with=MC-nonsense")
                .statusCode(422)
                .body(containsString("id=\"with-wrong\""), containsString("value=\"MC-nonsense\""));
    }

    // ── what is found ────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void what_is_found_beyond_doubt_is_opened_at_once() {
        var colony = Colony.found();
        var number = tagged(colony, WREN, "Sea grape", "941000024680302");
        tagged(colony, WREN, "Sea lavender", "941000024680310");
        for (var asked :
                List.of(number, number.toLowerCase(), number.replace('-', ' '), "941 000 024 680 302", "sea grape")) {
            search(colony, WREN, asked).statusCode(303).header("Location", endsWith("/animals/" + number));
        }
        search(colony, WREN, "sea")
                .statusCode(200)
                .body(containsString("Sea grape"), containsString("Sea lavender"), containsString("data-result=\"2\""));
    }

    @Test
    void nothing_is_found_by_what_is_not_shown() {
        var colony = Colony.found(); // an open pedigree: the animal is seen, its marks and names are not
        var number = tagged(colony, WREN, "Sea grape", "941000024680303");
        for (var asked : List.of("941000024680303", "sea", "9410000246803")) {
            search(colony, INES, asked).statusCode(200).body(not(containsString(number)));
        }
        var hidden = Colony.foundPrivate();
        var unseen = hidden.female(DOV);
        search(hidden, INES, unseen).statusCode(200).body(not(containsString("data-result")));
    }

    @Test
    void signs_of_the_database_are_letters_like_others_in_a_search() {
        var colony = Colony.found();
        colony.female(WREN);
        search(colony, WREN, "%a").statusCode(200).body(not(containsString("data-result")));
        search(colony, WREN, "").statusCode(200);
    }

    // ── what is changed ──────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_animal_that_is_registered_twice_with_one_form_is_there_once() {
        var colony = Colony.found();
        var form =
                Map.of("sex", "female", "origin", "wild-caught", "sire.kind", "unknown", "ownReference", "Driftwood");
        var to = once("/animals");
        var first = send(colony, WREN, to, form).statusCode(303).extract().header("Location");
        var again = send(colony, WREN, to, form).statusCode(303).extract().header("Location");
        assertThat(again).isEqualTo(first);
    }

    @Test
    void a_refused_form_keeps_what_was_typed_and_says_at_the_field_what_is_wrong() {
        var colony = Colony.found();
        var form = Map.of(
                "sex", "female", "origin", "captive-bred", "sire.kind", "unknown", "born", "27/13/26", "notes", "kept");
        send(colony, WREN, once("/animals"), form)
                .statusCode(422)
                .body(
                        containsString("id=\"e-born\""),
                        containsString("value=\"27/13/26\""),
                        containsString(">kept</textarea>"));
    }

    @Test
    void parents_are_corrected_and_one_that_a_rule_speaks_against_is_left_with_a_reason() {
        var colony = Colony.found();
        var young = colony.register(WREN, Colony.animal("unknown", "2021-01-01"));
        var dam = colony.female(WREN); // 214 days older
        var form = new HashMap<String, Object>(Map.of("dam", dam, "sire.kind", "unknown"));
        var below = "/animals/" + young + "/parentage";
        form.put("revision", revision(colony, WREN, below));
        send(colony, WREN, below, form)
                .statusCode(422)
                .body(containsString("value=\"dam-too-young\""), containsString("value=\"" + dam + "\""));
        form.put("leave[0].rule", "dam-too-young");
        form.put("leave[0].reason", "");
        send(colony, WREN, below, form).statusCode(422);
        form.put("leave[0].reason", "the dates were read from the permits");
        send(colony, WREN, below, form).statusCode(303).header("Location", endsWith("/animals/" + young));
        page(colony, WREN, "/animals/" + young + "/findings")
                .body(containsString("the dates were read from the permits"));
    }

    @Test
    void a_change_on_what_was_changed_meanwhile_is_refused_once_and_then_made() {
        var colony = Colony.found();
        var number = colony.female(WREN);
        var below = "/animals/" + number + "/description";
        var stale = revision(colony, WREN, below);
        colony.put(WREN, number, "/sex", Map.of("sex", "male")).statusCode(200);
        var form = new HashMap<String, Object>(
                Map.of("origin", "unknown", "malformed", "false", "notes", "from the east"));
        form.put("revision", stale);
        send(colony, WREN, below, form).statusCode(422);
        form.put("revision", revision(colony, WREN, below));
        send(colony, WREN, below, form).statusCode(303);
        page(colony, WREN, "/animals/" + number).body(containsString("from the east"));
    }

    @Test
    void a_death_is_reported_and_taken_back() {
        var colony = Colony.found();
        var number = colony.female(WREN);
        var below = "/animals/" + number + "/death";
        var form = Map.of("on", "2025-11-02", "cause", "old age", "revision", revision(colony, WREN, below));
        send(colony, WREN, below, form).statusCode(303);
        page(colony, WREN, "/animals/" + number).body(containsString("old age"));
        send(colony, WREN, below + "/withdrawal", Map.of("revision", revision(colony, WREN, below)))
                .statusCode(303);
        page(colony, WREN, "/animals/" + number).body(not(containsString("old age")));
    }

    @Test
    void a_transponder_is_added_and_no_longer_carried() {
        var colony = Colony.found();
        var number = colony.female(WREN);
        var below = "/animals/" + number + "/identifiers";
        send(colony, WREN, once(below), Map.of("kind", "transponder", "value", "941-0000-2468-0304"))
                .statusCode(303);
        page(colony, WREN, "/animals/" + number).body(containsString("941000024680304"));
        var revision = revision(colony, WREN, below);
        send(
                        colony,
                        WREN,
                        below + "/end",
                        Map.of("kind", "transponder", "value", "941000024680304", "revision", revision))
                .statusCode(303);
        page(colony, WREN, "/animals/" + number).body(not(containsString("941000024680304")));
    }

    @Test
    void a_photograph_is_shown_and_found_by_its_label() throws Exception {
        var colony = Colony.found();
        var number = colony.female(WREN);
        var picture = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), "png", picture);
        Browsing.as(WREN)
                .multiPart("photo", "head.png", picture.toByteArray(), "image/png")
                .multiPart("label", "head from above")
                .multiPart("takenOn", "2026-08-01")
                .post("/populations/" + colony.code + once("/animals/" + number + "/photos"))
                .then()
                .statusCode(303);
        page(colony, WREN, "/animals/" + number)
                .body(containsString("alt=\"head from above\""), containsString("?thumbnail=true"));
        search(colony, WREN, "from above").statusCode(200).body(containsString(number));
        Browsing.as(WREN)
                .multiPart("label", "nothing chosen")
                .post("/populations/" + colony.code + once("/animals/" + number + "/photos"))
                .then()
                .statusCode(422)
                .body(containsString("id=\"e-photo\""), containsString("value=\"nothing chosen\""));
    }

    @Test
    void nobody_but_its_keeper_opens_the_forms_that_correct_it() {
        var colony = Colony.found();
        var number = colony.female(WREN);
        for (var form :
                List.of("description", "sex", "death", "parentage", "locality", "identifiers", "photos", "findings")) {
            page(colony, INES, "/animals/" + number + "/" + form)
                    .statusCode(403)
                    .body(containsString("not in a collection of yours"));
        }
    }

    @Test
    void a_coordinator_sets_an_animal_of_somebody_else_on_hold_and_lifts_it() {
        var colony = Colony.found();
        var number = colony.female(INES);
        var below = "/animals/" + number + "/breeding-hold";
        send(colony, WREN, below, Map.of("reason", "her last litter was large")).statusCode(303);
        page(colony, WREN, below).body(containsString("her last litter was large"), containsString("/lifting"));
        send(colony, WREN, once(below + "/lifting"), Map.of("reason", "a year has passed"))
                .statusCode(303);
        send(colony, WREN, below, Map.of("reason", "")).statusCode(422).body(containsString("id=\"e-reason\""));
    }

    @Test
    void two_records_of_one_animal_are_claimed_by_one_keeper_and_confirmed_by_the_other() {
        var colony = Colony.found();
        var mine = colony.register(WREN, Colony.animal("female", null));
        var theirs = colony.register(INES, Colony.animal("female", null));
        send(
                        colony,
                        WREN,
                        once("/animals/" + mine + "/same-animal-claims"),
                        Map.of("other", theirs, "evidence", "the same scar"))
                .statusCode(303);
        var html = page(colony, INES, "/animals/" + theirs + "/same-animal-claims")
                .body(containsString("the same scar"))
                .extract()
                .asString();
        var claim = Pattern.compile("/same-animal-claims/([0-9a-f-]{36})/confirmation")
                .matcher(html);
        assertThat(claim.find()).isTrue();
        send(colony, INES, once("/same-animal-claims/" + claim.group(1) + "/confirmation"), Map.of("animal", theirs))
                .statusCode(303);
        page(colony, INES, "/animals/" + theirs).body(containsString(mine));
    }
}
