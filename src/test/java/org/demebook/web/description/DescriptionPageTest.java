package org.demebook.web.description;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.Test;

/** What a population is, for its members; coordinators change it. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class DescriptionPageTest {
    private static final Pattern INPUT = Pattern.compile("<input [^>]*name=\"([^\"]+)\"[^>]*?value=\"([^\"]*)\"");

    @Test
    void members_read_every_figure_with_its_source_and_change_nothing() {
        var colony = Colony.found();
        Browsing.as(INES)
                .get("/populations/" + colony.code)
                .then()
                .statusCode(200)
                .body(containsString("105 days"))
                .body(containsString("Levine, Schuett"))
                .body(containsString("common practice, no source"))
                .body(not(containsString("/description\"")));
        Browsing.as(INES)
                .get("/populations/" + colony.code + "/description")
                .then()
                .statusCode(403);
        send(colony, INES, Map.of()).statusCode(403);
    }

    @Test
    void a_coordinator_changes_a_figure_its_source_and_the_tests() {
        var colony = Colony.found();
        var form = form(colony);
        form.put("profile.gestation.daysFromShedToBirth", "107");
        form.put("source gestation.daysFromShedToBirth", "twelve litters of our own");
        form.put("source breeding.daysOfSpermStorage", "");
        form.put("profile.breeding.testsBeforePairing", "Cryptosporidium\r\n\r\n nidovirus ");
        send(colony, WREN, form)
                .statusCode(303)
                .header("Location", endsWith("/populations/" + colony.code + "?kept=yes"));
        colony.get(WREN, "")
                .body("profile.gestation.daysFromShedToBirth", equalTo(107))
                .body("profile.gestation.daysFromShedToBirthAtLeast", equalTo(100))
                .body("profile.sources.'gestation.daysFromShedToBirth'", equalTo("twelve litters of our own"))
                .body("profile.sources.'breeding.daysOfSpermStorage'", equalTo(null))
                .body("profile.sources.sexSystem", containsString("Gamble"))
                .body("profile.breeding.testsBeforePairing", equalTo(List.of("Cryptosporidium", "nidovirus")));

        send(colony, WREN, form).statusCode(422); // somebody changed it since this form was opened
    }

    @Test
    void what_is_wrong_is_said_at_its_field_and_what_was_typed_is_kept() {
        var colony = Colony.found();
        var form = form(colony);
        form.put("name", "");
        form.put("taxon", "a taxon that is kept");
        form.put("profile.rearing.mealsToLeave", "many");
        send(colony, WREN, form)
                .statusCode(422)
                .body(allOf(
                        containsString("id=\"e-name\""),
                        containsString("id=\"e-profile.rearing.mealsToLeave\""),
                        containsString("a taxon that is kept"),
                        containsString("value=\"many\"")));
        colony.get(WREN, "").body("name", equalTo("Marrowfin Cay"));
    }

    /** As the page offers it. */
    private static Map<String, String> form(Colony colony) {
        var page = Browsing.as(WREN)
                .get("/populations/" + colony.code + "/description")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        var form = new HashMap<String, String>();
        var input = INPUT.matcher(page);
        while (input.find()) {
            form.put(input.group(1), input.group(2));
        }
        form.put("birthMode", "live-bearing");
        form.put("profile.sexSystem", "xx-xy");
        return form;
    }

    private static ValidatableResponse send(Colony colony, String keeper, Map<String, String> form) {
        return Browsing.as(keeper)
                .contentType("application/x-www-form-urlencoded; charset=UTF-8")
                .formParams(form)
                .post("/populations/" + colony.code + "/description")
                .then();
    }
}
