package org.demebook.web.counts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.web.Browsing.anonymous;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.Test;

/** Published counts are for everybody; a coordinator publishes them, and each keeper says whether they are protected. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CountsPageTest {
    private static final String DAY = "2025-06-01";
    private static final String TICKED = "yes";
    private static final int MOST_LOOKS = 300;

    @Test
    void everybody_reads_them_and_what_is_withheld_is_said_with_what_follows_anyway() {
        var colony = threeKeepers();
        colony.register(WREN, animal("unknown", "2025-01-15"));
        colony.register(INES, animal("unknown", "2025-01-15"));
        colony.post(WREN, "/count-releases", Map.of("countedOn", DAY)).statusCode(201);

        page("/populations/" + colony.code + "/counts")
                .statusCode(200)
                .body(containsString("/populations/" + colony.code + "/counts/" + DAY));
        page("/populations/" + colony.code + "/counts/" + DAY)
                .statusCode(200)
                .body(containsString("Marrowfin Cay"))
                .body(containsString("withheld"))
                .body(containsString("count withheld: too few keepers"))
                .body(containsString("/count-releases/" + DAY + "/table.csv"))
                .body(containsString("/count-releases/" + DAY + "/darwin-core.zip"));
        page("/").body(containsString("/populations/" + colony.code + "/counts/" + DAY));
    }

    @Test
    void a_population_that_published_nothing_looks_like_one_that_is_not_there() {
        var colony = Colony.found();
        var silent = body("/populations/" + colony.code + "/counts");
        var nowhere = body("/populations/ZZZZZ/counts");
        assertThat(silent.replace(colony.code, "ZZZZZ")).isEqualTo(nowhere);
        assertThat(body("/")).doesNotContain(colony.code);
        page("/populations/" + colony.code + "/counts/" + DAY).statusCode(404);
    }

    @Test
    void a_coordinator_publishes_and_sees_what_came_of_it() throws Exception {
        var colony = threeKeepers();
        var progress = publish(colony, WREN, key(), DAY, TICKED)
                .statusCode(303)
                .header("Location", containsString("/count-releases/preparations/"))
                .extract()
                .header("Location");
        assertThat(whenOver(progress)).contains("/populations/" + colony.code + "/counts/" + DAY);
        page("/populations/" + colony.code + "/counts/" + DAY)
                .statusCode(200)
                .body(containsString(">18 <span class=\"label\">Living animals"));

        publish(colony, WREN, key(), DAY, TICKED)
                .statusCode(422)
                .body(containsString("The counts of " + DAY + " are released and stay as they are"));
    }

    @Test
    void counts_that_would_tell_too_much_are_not_published_and_the_reason_is_said() throws Exception {
        var colony = Colony.found();
        colony.female(WREN);
        var progress = publish(colony, WREN, key(), DAY, TICKED).extract().header("Location");
        assertThat(whenOver(progress)).contains("Nothing was published", "fewer than 3 keepers");
        // whoever did not ask for it is told of nothing
        Browsing.as(INES).get(progress).then().statusCode(403);
    }

    @Test
    void what_is_wrong_is_said_at_each_field_and_what_was_typed_is_kept() {
        var colony = Colony.found();
        publish(colony, WREN, key(), "2025-06-31", null)
                .statusCode(422)
                .body(containsString("value=\"2025-06-31\""))
                .body(containsString("id=\"e-countedOn\""))
                .body(containsString("id=\"e-understood\""));
    }

    @Test
    void sent_twice_it_is_prepared_once() {
        var colony = threeKeepers();
        var key = key();
        var first = publish(colony, WREN, key, DAY, TICKED).extract().header("Location");
        publish(colony, WREN, key, DAY, TICKED).statusCode(303).header("Location", first);
    }

    @Test
    void members_neither_publish_nor_read_the_parameters() {
        var colony = Colony.found();
        Browsing.as(INES)
                .get("/populations/" + colony.code + "/count-releases/new")
                .then()
                .statusCode(403);
        publish(colony, INES, key(), DAY, TICKED).statusCode(422).body(containsString("coordinator"));
        Browsing.as(INES)
                .get("/populations/" + colony.code + "/count-rules")
                .then()
                .statusCode(403);
        Browsing.as(INES)
                .get("/populations/" + colony.code + "/counts")
                .then()
                .statusCode(200)
                .body(not(containsString("count-rules")));
    }

    @Test
    void parameters_are_kept_once_they_are_in_range_and_on_the_revision_that_was_read() {
        var colony = Colony.found();
        var rules = "/populations/" + colony.code + "/count-rules";
        form(WREN, rules, Map.of("fewestKeepers", "2", "percent", "20", "revision", "0"))
                .statusCode(422)
                .body(containsString("id=\"e-fewestKeepers\""))
                .body(containsString("value=\"2\""));
        form(WREN, rules, Map.of("fewestKeepers", "4", "percent", "30", "revision", "0"))
                .statusCode(303)
                .header("Location", containsString(rules));
        form(WREN, rules, Map.of("fewestKeepers", "5", "percent", "30", "revision", "0"))
                .statusCode(422);
        Browsing.as(WREN).get(rules).then().body(allOf(containsString("value=\"4\""), containsString("value=\"30\"")));
    }

    @Test
    void a_keeper_does_without_protection_and_takes_that_back() {
        var colony = Colony.found();
        var waiver = "/populations/" + colony.code + "/count-waiver";
        form(DOV, waiver, Map.of()).statusCode(422).body(containsString("id=\"e-waived\""));
        form(DOV, waiver, Map.of("waived", "true")).statusCode(303).header("Location", endsWith(waiver + "?kept=yes"));
        Browsing.as(DOV).get(waiver).then().body(containsString("value=\"true\" checked"));
        form(DOV, waiver, Map.of("waived", "false")).statusCode(303);
        Browsing.as(DOV).get(waiver).then().body(containsString("value=\"false\" checked"));
    }

    /** Each of the three has two males, two females and two young. */
    private static Colony threeKeepers() {
        var colony = Colony.found();
        for (var keeper : new String[] {WREN, INES, DOV}) {
            for (var sex : new String[] {"female", "male"}) {
                colony.register(keeper, animal(sex, "2015-06-01"));
                colony.register(keeper, animal(sex, "2016-06-01"));
                colony.register(keeper, animal(sex, "2025-02-01"));
            }
        }
        return colony;
    }

    private static ValidatableResponse publish(Colony colony, String keeper, String key, String day, String ticked) {
        var form = ticked == null ? Map.of("countedOn", day) : Map.of("countedOn", day, "understood", ticked);
        return form(keeper, "/populations/" + colony.code + "/count-releases?once=" + key, form);
    }

    private static ValidatableResponse form(String keeper, String address, Map<String, String> form) {
        return Browsing.as(keeper)
                .contentType("application/x-www-form-urlencoded")
                .formParams(form)
                .post(address)
                .then();
    }

    /** The part of the page that a script asks for again and again, when it is asked for no more. */
    private static String whenOver(String progress) throws InterruptedException {
        for (int looks = 0; looks < MOST_LOOKS; looks++) {
            var part = Browsing.as(WREN)
                    .header("HX-Request", "true")
                    .get(progress)
                    .then()
                    .statusCode(200)
                    .extract()
                    .asString();
            assertThat(part).doesNotContain("<html");
            if (!part.contains("hx-trigger")) {
                return part;
            }
            Thread.sleep(100);
        }
        throw new AssertionError(progress + " goes on and on");
    }

    private static ValidatableResponse page(String address) {
        return anonymous().get(address).then();
    }

    private static String body(String address) {
        // but for the moment at which it was made
        return page(address).statusCode(200).extract().asString().replaceAll("<meta name=\"made\"[^>]*>", "");
    }

    private static String key() {
        return UUID.randomUUID().toString();
    }
}
