package org.demebook.web.sharing;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is shared can be read, given and taken back from a page. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SharingPageTest {
    private Colony colony;
    private String pages;

    @BeforeEach
    void found() {
        colony = Colony.foundPrivate();
        pages = "/populations/" + colony.code;
    }

    @Test
    void who_never_chose_shares_nothing_and_is_told_so() {
        Browsing.as(WREN)
                .get(pages + "/sharing")
                .then()
                .statusCode(200)
                .body(containsString("Nothing was chosen yet"), containsString("Nobody sees"));
    }

    @Test
    void a_ready_choice_is_made_on_the_page_that_says_what_it_changes() {
        var collection = colony.get(WREN, "/collections").extract().<String>path("[0].id");
        var choice = pages + "/collections/" + collection + "/sharing";
        Browsing.as(WREN)
                .get(choice + "?choice=compute-only")
                .then()
                .statusCode(200)
                .body(containsString("Compute only"));
        Browsing.as(WREN)
                .formParam("choice", "compute-only")
                .post(choice)
                .then()
                .statusCode(303)
                .header("Location", endsWith("/sharing"));
        Browsing.as(WREN).get(pages + "/sharing").then().body(containsString("<strong>Compute only</strong>"));
    }

    @Test
    void a_grant_sent_twice_is_given_once_and_taken_back_with_one_tap() {
        var once = UUID.randomUUID().toString();
        var first = give(once).statusCode(303).extract().header("Location");
        give(once).statusCode(303).header("Location", endsWith(first.replaceFirst(".*/populations", "/populations")));
        var address = first.replaceFirst(".*/populations", "/populations");
        Browsing.as(WREN).get(address).then().body(containsString("holds"), containsString(INES));
        Browsing.as(WREN)
                .post(address + "/withdrawal?once=" + UUID.randomUUID())
                .then()
                .statusCode(303);
        Browsing.as(WREN).get(address).then().body(containsString("taken back"));
        Browsing.as(INES).get(address).then().statusCode(404);
    }

    @Test
    void a_grant_that_cannot_be_is_shown_again_with_all_that_was_typed() {
        Browsing.as(WREN)
                .formParam("recipient.kind", "keeper")
                .formParam("recipient.name", "nobody-of-that-name")
                .formParam("fieldGroups[]", "identity")
                .formParam("purposes[]", "research")
                .formParam("until", "2026-13-45")
                .formParam("conditions", "Ask me first, please")
                .post(pages + "/grants?once=" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body(
                        containsString("Ask me first, please"),
                        containsString("id=\"e-actions[]\""),
                        containsString("id=\"e-until\""));
    }

    @Test
    void leaving_wants_the_name_once_more() {
        Browsing.as(INES).get(pages + "/erasure").then().statusCode(200).body(containsString("cannot be taken back"));
        Browsing.as(INES)
                .formParam("name", "somebody else")
                .post(pages + "/erasure")
                .then()
                .statusCode(422)
                .body(not(containsString("Set-Cookie")));
        Browsing.as(INES).get(pages + "/sharing").then().statusCode(200);
    }

    private ValidatableResponse give(String once) {
        return Browsing.as(WREN)
                .formParam("recipient.kind", "keeper")
                .formParam("recipient.name", INES)
                .formParam("fieldGroups[]", "identity", "parentage")
                .formParam("purposes[]", "pedigree-view")
                .formParam("actions[]", "read")
                .post(pages + "/grants?once=" + once)
                .then();
    }
}
