package org.demebook.web.members;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.PASSWORD;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class MembersPageTest {
    Colony colony;

    @BeforeEach
    void found() {
        colony = Colony.found();
    }

    @Test
    void a_coordinator_sees_who_belongs_to_the_population_and_a_member_does_not() {
        Browsing.as(WREN).get(path("/members")).then().statusCode(200).body(containsString(INES), containsString(DOV));
        Browsing.as(INES)
                .get(path("/members"))
                .then()
                .statusCode(200)
                .body(
                        not(containsString(">" + DOV)),
                        not(containsString("/members/" + DOV)),
                        not(containsString(path("/invitations"))));
    }

    @Test
    void an_invited_one_opens_an_account_with_the_link_is_signed_in_and_belongs_to_it() {
        var link = invite();
        Browsing.anonymous()
                .get(link)
                .then()
                .statusCode(200)
                .header("Referrer-Policy", "strict-origin")
                .header("Cache-Control", "no-store")
                .body(containsString("Marrowfin Cay"));
        var name = "sol-" + colony.code.toLowerCase();
        var cookie = Browsing.anonymous()
                .formParam("name", name)
                .formParam("fullName", "Sol Fenwick")
                .formParam("password", PASSWORD)
                .post(link + "/acceptance?once=" + UUID.randomUUID())
                .then()
                .statusCode(303)
                .header("Location", endsWith(path("/members")))
                .extract()
                .cookie("demebook-session");
        Browsing.anonymous()
                .cookie("demebook-session", cookie)
                .get(path("/members"))
                .then()
                .statusCode(200)
                .body(containsString(name));
        colony.get(WREN, "/members").body("name", hasItem(name));
        // it was good once
        Browsing.anonymous().get(link).then().statusCode(404);
    }

    @Test
    void a_refused_account_keeps_what_was_typed_but_the_password_and_the_link_stays_good() {
        var link = invite();
        Browsing.anonymous()
                .formParam("name", "s")
                .formParam("fullName", "Sol Fenwick")
                .formParam("password", PASSWORD)
                .post(link + "/acceptance?once=" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body("**.find { it.@name == 'name' }.@value", equalTo("s"))
                .body("**.find { it.@name == 'name' }.@'aria-invalid'", equalTo("true"))
                .body(containsString("Sol Fenwick"), not(containsString(PASSWORD)));
        Browsing.anonymous().get(link).then().statusCode(200);
    }

    @Test
    void who_has_an_account_joins_with_it_once_however_often_it_is_sent() {
        var link = invite();
        Browsing.as(OUTSIDER).get(link).then().statusCode(200).body(containsString("Join as " + OUTSIDER));
        var once = UUID.randomUUID().toString();
        for (int i = 0; i < 2; i++) {
            Browsing.as(OUTSIDER)
                    .post(link + "/joining?once=" + once)
                    .then()
                    .statusCode(303)
                    .header("Location", endsWith(path("/members")));
        }
        colony.get(WREN, "/members").body("name", hasItems(WREN, INES, DOV, OUTSIDER));
    }

    @Test
    void who_signs_in_first_comes_back_to_the_invitation() {
        var link = invite();
        Browsing.anonymous().get(link + "/sign-in").then().statusCode(303).header("Location", endsWith("/sign-in"));
        Browsing.as(OUTSIDER).get(link + "/sign-in").then().statusCode(303).header("Location", endsWith(link));
    }

    @Test
    void a_link_is_shown_once_and_made_once() {
        var once = UUID.randomUUID().toString();
        Browsing.as(WREN)
                .formParam("role", "member")
                .post(path("/invitations?once=" + once))
                .then()
                .statusCode(200);
        Browsing.as(WREN)
                .formParam("role", "member")
                .post(path("/invitations?once=" + once))
                .then()
                .body(not(containsString("id=\"link\"")));
        Browsing.as(INES)
                .formParam("role", "member")
                .post(path("/invitations?once=" + UUID.randomUUID()))
                .then()
                .statusCode(403);
    }

    @Test
    void somebody_whom_the_node_does_not_know_is_told_at_the_form_with_what_was_typed() {
        Browsing.as(WREN)
                .formParam("form", "admit")
                .formParam("name", "nobody-here")
                .formParam("role", "member")
                .post(path("/members?once=" + UUID.randomUUID()))
                .then()
                .statusCode(422)
                .body("**.find { it.@id == 'f-name' }.@value", equalTo("nobody-here"))
                .body(containsString("invite them"));
    }

    @Test
    void regions_and_distances_are_kept_and_a_wrong_figure_is_told_at_its_field() {
        Browsing.as(WREN)
                .formParam("revision", "0")
                .formParam("names", "North\r\nSouth\r\n")
                .post(path("/regions"))
                .then()
                .statusCode(303);
        colony.get(WREN, "/regions").body("names", equalTo(List.of("North", "South")));
        var distances = Browsing.as(WREN)
                .formParam("revision", "0")
                .formParam("pairs[0].one", "North")
                .formParam("pairs[0].other", "South");
        distances
                .formParam("pairs[0].kilometres", "far")
                .post(path("/regions/distances"))
                .then()
                .statusCode(422)
                .body("**.find { it.@name == 'pairs[0].kilometres' }.@value", equalTo("far"))
                .body("**.find { it.@name == 'pairs[0].kilometres' }.@'aria-invalid'", equalTo("true"));
        Browsing.as(WREN)
                .formParam("revision", "0")
                .formParam("pairs[0].one", "North")
                .formParam("pairs[0].other", "South")
                .formParam("pairs[0].kilometres", "400")
                .formParam("pairs[0].border", "true")
                .post(path("/regions/distances"))
                .then()
                .statusCode(303);
        colony.get(INES, "/regions/distances")
                .body("pairs[0].kilometres", equalTo(400))
                .body("pairs[0].border", equalTo(true));
    }

    @Test
    void a_household_opens_a_collection_and_states_its_region() {
        Browsing.as(WREN)
                .formParam("form", "open")
                .formParam("label", "The south wall")
                .formParam("sharedWith", INES + ", " + DOV)
                .post(path("/collections?once=" + UUID.randomUUID()))
                .then()
                .statusCode(303);
        colony.get(DOV, "/collections").body("label", hasItem("The south wall"));
        Browsing.as(WREN)
                .formParam("form", "open")
                .formParam("label", "")
                .formParam("sharedWith", INES)
                .post(path("/collections?once=" + UUID.randomUUID()))
                .then()
                .statusCode(422)
                .body("**.find { it.@name == 'sharedWith' }.@value", equalTo(INES))
                .body("**.find { it.@name == 'label' }.@'aria-invalid'", equalTo("true"));
    }

    @Test
    void a_population_is_founded_and_its_founder_coordinates_it() {
        var code = "N" + colony.code;
        Browsing.as(INES)
                .formParam("name", "Tern Skerry")
                .formParam("code", code)
                .formParam("taxon", "insular dwarf Boa")
                .formParam("locality", "Tern Skerry")
                .formParam("birthMode", "live-bearing")
                .formParam("figuresOf", colony.code)
                .post("/populations?once=" + UUID.randomUUID())
                .then()
                .statusCode(303)
                .header("Location", endsWith("/populations/" + code + "/members"));
        Browsing.as(INES).get("/populations").then().statusCode(200).body(containsString("Tern Skerry"));
        Browsing.as(INES)
                .formParam("code", "x")
                .post("/populations?once=" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body("**.find { it.@name == 'code' }.@value", equalTo("x"))
                .body("**.find { it.@name == 'code' }.@'aria-invalid'", equalTo("true"));
        Browsing.as(INES).get("/populations/new").then().statusCode(200);
    }

    @Test
    void only_an_administrator_invites_to_the_node_alone() {
        Browsing.as(INES).get("/invitations").then().statusCode(403);
        Browsing.as("administrator").get("/invitations").then().statusCode(200);
        Browsing.as("administrator")
                .post("/invitations?once=" + UUID.randomUUID())
                .then()
                .statusCode(200)
                .body(containsString("/invitations/"));
    }

    /** The path of a fresh link into the population. */
    private String invite() {
        var link = Browsing.as(WREN)
                .formParam("role", "member")
                .post(path("/invitations?once=" + UUID.randomUUID()))
                .then()
                .statusCode(200)
                .header("Cache-Control", "no-store")
                .extract()
                .htmlPath()
                .<String>get("**.find { it.@id == 'link' }.@value");
        assertThat(link).contains("/invitations/");
        return URI.create(link).getPath();
    }

    private String path(String below) {
        return "/populations/" + colony.code + below;
    }
}
