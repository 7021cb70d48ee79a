package org.demebook.web.litter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.litter.NewLitters.introduce;
import static org.demebook.litter.NewLitters.noted;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The pages of litters; counts are those of scenario A4 of the trade's own example (common practice, no source). */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LitterPagesTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    private static String page(String below) {
        return "/populations/" + colony.code + below;
    }

    /** 14 in all: 10 live, 1 live malformed, 1 stillborn, 2 slugs. */
    private static Map<String, Object> form(String dam) {
        var form = new HashMap<String, Object>();
        form.put("dam", "other");
        form.put("otherDam", dam);
        form.put("born", "2026-06-29");
        form.put("ovaFound", "14");
        form.put("liveBorn", "11");
        form.put("malformedLive", "1");
        form.put("stillborn", "1");
        form.put("unfertilised", "2");
        form.put("sire.kind", "worked-out");
        form.put("sire.animal", "");
        form.put("notes", "");
        return form;
    }

    private static ValidatableResponse send(String keeper, String once, Map<String, Object> form) {
        return Browsing.as(keeper)
                .formParams(form)
                .queryParam("once", once)
                .post(page("/litters"))
                .then();
    }

    private static String sent(Map<String, Object> form) {
        return send(WREN, UUID.randomUUID().toString(), form)
                .statusCode(303)
                .header("Location", containsString("/litters/"))
                .extract()
                .header("Location")
                .replaceFirst(".*/populations/[A-Z0-9]+", "");
    }

    private static ValidatableResponse look(String keeper, String below) {
        return Browsing.as(keeper).get(page(below)).then();
    }

    @Test
    void a_litter_is_registered_with_numbers_for_its_young_and_read() {
        var address = sent(form(colony.female(WREN)));

        var litter = colony.get(WREN, address);
        List<String> young = litter.statusCode(200).extract().path("young");
        assertThat(young).hasSize(11);
        var page = look(WREN, address).statusCode(200);
        young.forEach(number -> page.body(containsString(number)));
        page.body(containsString("2 of 14 slugs is within chance"));
    }

    @Test
    void sent_twice_it_is_one_litter() {
        var dam = colony.female(WREN);
        var once = UUID.randomUUID().toString();

        var first = send(WREN, once, form(dam)).statusCode(303).extract().header("Location");
        var again = send(WREN, once, form(dam)).statusCode(303).extract().header("Location");

        assertThat(again).isEqualTo(first);
        colony.get(WREN, "/litters?dam=" + dam).body("items.size()", equalTo(1));
    }

    @Test
    void one_that_does_not_add_up_is_held_and_keeps_what_was_typed() {
        var dam = colony.female(WREN);
        var form = form(dam);
        form.put("stillborn", "0");
        form.put("notes", "found at six");

        send(WREN, UUID.randomUUID().toString(), form)
                .statusCode(422)
                .body(containsString("one missing. Which?"))
                .body(containsString("aria-describedby=\"e-ovaFound\""))
                .body(containsString("found at six"))
                .body(containsString("<option value=\"" + dam + "\" selected>"));
        colony.get(WREN, "/litters?dam=" + dam).body("items.size()", equalTo(0));
    }

    @Test
    void no_female_and_no_total_are_told_at_their_fields() {
        var form = form("");
        form.put("ovaFound", "");

        send(WREN, UUID.randomUUID().toString(), form)
                .statusCode(422)
                .body(containsString("id=\"e-ovaFound\""))
                .body(containsString("<fieldset class=\"choices wrong\">"));
    }

    @Test
    void what_the_young_weighed_goes_to_their_diaries_in_the_order_of_their_numbers() {
        var form = form(colony.female(WREN));
        form.put("masses[]", List.of("30,5", "", "28"));
        form.put("massUnit", "g");
        form.put("young[1].sex", "female");

        var address = sent(form);

        List<String> young = colony.get(WREN, address).extract().path("young");
        colony.get(WREN, "/animals/" + young.get(0) + "/care-records").body("items[0].mass.grams", equalTo(30.5f));
        colony.get(WREN, "/animals/" + young.get(1) + "/care-records").body("items.size()", equalTo(0));
        colony.get(WREN, "/animals/" + young.get(1)).body("sex", equalTo("female"));
        look(WREN, address).body(containsString("30.5 g"));
    }

    @Test
    void a_mass_that_is_no_number_is_told_beside_its_young() {
        var form = form(colony.female(WREN));
        form.put("masses[]", List.of("heavy"));

        send(WREN, UUID.randomUUID().toString(), form)
                .statusCode(422)
                .body(containsString("Write a number."))
                .body(containsString("young-row wrong"));
    }

    @Test
    void who_is_awaited_comes_first_with_the_day_and_with_whom_she_was() {
        var female = colony.female(WREN);
        var male = colony.male(WREN);
        var shed = LocalDate.now().minusDays(100);
        introduce(
                colony,
                female,
                male,
                shed.minusDays(60).toString(),
                shed.minusDays(30).toString());
        noted(colony, female, "post-ovulation-shed", shed.toString());

        look(WREN, "/litters/new")
                .statusCode(200)
                .body(containsString("name=\"dam\" value=\"" + female + "\""))
                .body(containsString("data-dam=\"" + female + "\""));
        look(WREN, "/litters")
                .statusCode(200)
                .body(containsString("105 days after the shed"))
                .body(containsString("litters/new?dam=" + female));
    }

    @Test
    void what_a_rule_blocks_may_be_left_as_it_is_with_a_reason() {
        var dam = colony.register(WREN, Colony.animal("female", "2025-12-01"));
        var form = form(dam);
        send(WREN, UUID.randomUUID().toString(), form)
                .statusCode(422)
                .body(containsString("name=\"leave[0].rule\" value=\"dam-too-young\""));

        form.put("leave[0].rule", "dam-too-young");
        form.put("leave[0].reason", "");
        send(WREN, UUID.randomUUID().toString(), form).statusCode(422);

        form.put("leave[0].reason", "Her day of birth is a guess");
        look(WREN, sent(form)).body(containsString("Her day of birth is a guess"));
    }

    @Test
    void the_next_morning_it_is_corrected_and_the_first_statement_stays_to_be_seen() {
        var address = sent(form(colony.female(WREN)));
        var revision = colony.get(WREN, address).extract().path("revision").toString();
        look(WREN, address + "/outcome").statusCode(200).body(containsString("value=\"" + revision + "\""));

        var correction = new HashMap<String, Object>(Map.of(
                "revision", revision, "ovaFound", "15", "liveBorn", "12", "stillborn", "1", "unfertilised", "2"));
        correction.put("malformedLive", "1");
        var correct = Browsing.as(WREN).formParams(correction);
        correct.post(page(address + "/outcome")).then().statusCode(303).header("Location", startsWith("http"));

        List<String> young = colony.get(WREN, address).extract().path("young");
        assertThat(young).hasSize(12);
        look(WREN, address)
                .body(containsString("data-label=\"Found\">14"))
                .body(containsString("data-label=\"Found\">15"));

        Browsing.as(WREN)
                .formParams(correction)
                .post(page(address + "/outcome"))
                .then()
                .statusCode(422)
                .body(containsString("value=\"15\""));
    }

    @Test
    void twins_are_stated_and_taken_back() {
        var address = sent(form(colony.female(WREN)));
        List<String> young = colony.get(WREN, address).extract().path("young");
        var two = Map.of("numbers[]", List.of(young.get(0), young.get(1)), "kind", "identical");

        post(address + "/twins", two).statusCode(303);
        look(WREN, address).body(containsString("identical: one genome"));
        post(address + "/twins", Map.of("numbers[]", List.of(young.get(0), young.get(0)), "kind", "identical"))
                .statusCode(422)
                .body(containsString("Twins are two"));
        post(address + "/twins/withdrawal", Map.of("numbers[]", List.of(young.get(0), young.get(1))))
                .statusCode(303);
        colony.get(WREN, address).body("twins.size()", equalTo(0));
    }

    private static ValidatableResponse post(String below, Map<String, ?> form) {
        return Browsing.as(WREN)
                .formParams(form)
                .queryParam("once", UUID.randomUUID().toString())
                .post(page(below))
                .then();
    }

    @Test
    void a_form_without_a_picture_says_so_at_the_field() {
        var address = sent(form(colony.female(WREN)));

        Browsing.as(WREN)
                .multiPart("moment", "before-separation")
                .multiPart("label", "six in the morning")
                .queryParam("once", UUID.randomUUID().toString())
                .post(page(address + "/photos"))
                .then()
                .statusCode(422)
                .body(containsString("Choose a picture."))
                .body(containsString("six in the morning"));
    }

    @Test
    void a_litter_of_somebody_else_is_not_there() {
        var address = sent(form(colony.female(WREN)));

        look(INES, address).statusCode(404);
        look(INES, address + "/outcome").statusCode(404);
        look(INES, "/litters").statusCode(200).body(not(containsString(address)));
    }

    @Test
    void a_draft_of_one_keeper_is_not_sent_by_another() {
        var dam = colony.female(WREN);

        Browsing.as(WREN)
                .formParams(form(dam))
                .queryParam("once", UUID.randomUUID().toString())
                .queryParam("keeper", UUID.randomUUID().toString())
                .post(page("/litters"))
                .then()
                .statusCode(403);
        colony.get(WREN, "/litters?dam=" + dam).body("items.size()", equalTo(0));
    }

    @Test
    void a_draft_that_was_registered_in_an_earlier_wording_says_so() {
        var dam = colony.female(WREN);
        var once = UUID.randomUUID().toString();
        send(WREN, once, form(dam)).statusCode(303);
        var changed = form(dam);
        changed.put("notes", "changed after it was sent");

        send(WREN, once, changed).statusCode(422).body(containsString("data-sent-before"));
        colony.get(WREN, "/litters?dam=" + dam).body("items.size()", equalTo(1));
    }
}
