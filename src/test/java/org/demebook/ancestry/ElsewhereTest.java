package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.ancestry.ToldInTests.Telling;
import org.demebook.notation.Sex;
import org.demebook.programme.Seasons;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.Test;

/**
 * Animals that live on another node, in the figures of this one: the worked pedigree in two parts. Exact fractions by hand, from the
 * definition of kinship.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ElsewhereTest {
    private static final LocalDate GROWN = LocalDate.of(2014, 6, 1);

    /** 002, 001 × 002 → 011, and 013 of other founders; all of wren's. */
    private static final class North {
        final Colony colony = Colony.found();
        final String founder = founder("male");
        final String of011 = colony.young(WREN, "male", "2013-06-01", founder("female"), founder);
        final String of013 = colony.young(WREN, "female", "2014-06-01", founder("female"), founder("male"));
        final Telling south = new Telling(colony.code);

        private String founder(String sex) {
            var founder = animal(sex, null);
            founder.put("origin", "wild-caught");
            return colony.register(WREN, founder);
        }

        UUID id(String number) {
            return UUID.fromString(
                    colony.get(WREN, "/animals/" + number).extract().path("id"));
        }
    }

    // scenario F1: 014 = 002 × 005, 011 = 002 × 001: ½ · ½ · ½ of 002 with himself, 1/8
    @Test
    void a_founder_that_stands_on_two_nodes_links_their_animals_once_both_agree() {
        var north = new North();
        var same = north.south.shown(2, Sex.MALE, null, null, null);
        var mother = north.south.shown(5, Sex.FEMALE, null, null, null);
        var male = north.south.shown(14, Sex.MALE, GROWN, mother, same);
        var kinship = "/animals/" + north.of011 + "/kinship/" + north.south.number(male);
        north.south.tell();
        north.colony
                .get(WREN, kinship)
                .statusCode(200)
                .body("kinship", equalTo(0f))
                .body("ifClaimsHold", nullValue())
                .body("commonAncestors", empty());

        north.south.possiblySame(same, north.id(north.founder));
        north.south.tell();
        north.colony.get(WREN, kinship).body("kinship", equalTo(0f)).body("ifClaimsHold", equalTo(.125f));

        north.south.same(same, north.id(north.founder));
        north.south.tell();
        for (var keeper : List.of(WREN, DOV)) {
            north.colony
                    .get(keeper, kinship)
                    .body("kinship", equalTo(.125f))
                    .body("ifClaimsHold", nullValue())
                    .body("commonAncestors", contains(north.founder))
                    .body("throughAncestorsNotShown", nullValue());
        }
        // and the number that it has there leads to it too
        north.colony
                .get(WREN, "/animals/" + north.south.number(same) + "/ancestry")
                .body("animal.number", equalTo(north.founder));

        north.south.withdraw();
        north.colony.get(WREN, kinship).statusCode(404);
        north.colony.get(WREN, "/gene-pool").body("living", equalTo(6));
    }

    @Test
    void an_animal_of_another_node_is_a_partner_and_its_keeper_is_not_told() {
        var north = new North();
        var male = north.south.shown(14, Sex.MALE, GROWN, null, null);
        north.south.tell();
        north.colony
                .get(WREN, "/pairings?for=" + north.of013)
                .statusCode(200)
                .body(
                        "pairings.find { it.sire.number == '" + north.south.number(male) + "' }.sire.keptBy",
                        equalTo("a keeper on another node (U)"));
        north.colony
                .get(WREN, "/pairings")
                .statusCode(200)
                .body("pairings.sire.number", hasItem(north.south.number(male)));
        var page = Browsing.as(WREN).get("/populations/" + north.colony.code + "/animals/" + north.south.number(male));
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.asString()).contains("another node (U)");
        assertThat(ask("select count(*) from demebook.disclosure where collection_id = ?", north.south.keeper))
                .as("who saw it is written down where it was granted")
                .containsExactly("0");

        north.south.withdraw();
        north.colony
                .get(WREN, "/pairings?for=" + north.of013)
                .body("pairings.sire.number", not(hasItem(north.south.number(male))));
        assertThat(Browsing.as(WREN)
                        .get("/populations/" + north.colony.code + "/animals/" + north.south.number(male))
                        .statusCode())
                .isEqualTo(404);
    }

    @Test
    void what_may_be_computed_with_counts_and_is_named_nowhere() {
        var north = new North();
        var same = north.south.skeleton(Sex.MALE, null, null);
        var mother = north.south.skeleton(Sex.FEMALE, null, null);
        var male = north.south.skeleton(Sex.MALE, mother, same);
        var bought = north.colony.female(WREN);
        var seen = north.south.shown(20, Sex.FEMALE, GROWN, mother, male);
        north.south.same(same, north.id(north.founder));
        north.south.arrived(north.id(bought), mother, male, false);
        north.south.tell();

        // ½ of 014 (1/8) with 011; of the mother nothing
        for (var keeper : List.of(WREN, DOV)) {
            for (var young : List.of(bought, north.south.number(seen))) {
                north.colony
                        .get(keeper, "/animals/" + young + "/kinship/" + north.of011)
                        .body("kinship", equalTo(.0625f))
                        .body("commonAncestors", empty())
                        .body("throughAncestorsNotShown", equalTo(true));
                north.colony
                        .get(keeper, "/animals/" + young + "/ancestry")
                        .body("animal.dam", nullValue())
                        .body("animal.sire.kind", equalTo("unknown"))
                        .body("ancestors", empty());
            }
        }
        // six of wren's founders and young, the one that was bought, and three skeletons and 020 elsewhere
        north.colony.get(WREN, "/gene-pool").body("living", equalTo(10));

        var secrets = List.of(
                north.south.number(mother),
                north.south.number(male),
                north.south.keeper.toString(),
                mother.toString(),
                male.toString());
        for (var secret : secrets.subList(0, 2)) {
            north.colony.get(WREN, "/animals/" + secret + "/ancestry").statusCode(404);
            north.colony
                    .get(WREN, "/animals/" + north.of013 + "/kinship/" + secret)
                    .statusCode(404);
            north.colony.get(WREN, "/pairings?for=" + secret).statusCode(404);
        }
        var of = "/animals/" + bought;
        for (var keeper : List.of(WREN, DOV)) {
            for (var path : List.of(
                    "/animals",
                    of,
                    of + "/ancestry?generations=20",
                    of + "/kinship/" + north.of011,
                    "/gene-pool",
                    "/pairings",
                    "/pairings?for=" + north.of013)) {
                assertThat(north.colony.get(keeper, path).extract().asString())
                        .as("%s for %s", path, keeper)
                        .doesNotContain(secrets);
            }
            for (var path : List.of(
                    of,
                    of + "/ancestry",
                    of + "/kinship?with=" + north.of011,
                    "/animals/" + north.south.number(seen),
                    "/pairings?for=" + north.of013,
                    "/figures")) {
                assertThat(Browsing.as(keeper)
                                .get("/populations/" + north.colony.code + path)
                                .asString())
                        .as("the page %s for %s", path, keeper)
                        .doesNotContain(secrets);
            }
        }
    }

    @Test
    void parents_that_were_told_to_be_computed_with_are_not_shown_even_to_who_holds_the_animal() {
        var north = new North();
        var dam = north.south.shown(5, Sex.FEMALE, null, null, null);
        var bought = north.colony.female(WREN);
        north.south.arrived(north.id(bought), dam, null, true);
        north.south.tell();
        north.colony
                .get(WREN, "/animals/" + bought + "/ancestry")
                .body("knownAncestry", equalTo(.5f))
                .body("animal.dam", nullValue())
                .body("ancestors", empty())
                .body("throughAncestorsNotShown", equalTo(true));

        north.south.arrived(north.id(bought), dam, null, false);
        north.south.tell();
        north.colony
                .get(WREN, "/animals/" + bought + "/ancestry")
                .body("animal.dam", equalTo(north.south.number(dam)))
                .body("ancestors.number", contains(north.south.number(dam)));
        // an entry here that touches the animal leaves what was told
        north.colony.female(WREN);
        north.colony.get(WREN, "/animals/" + bought + "/ancestry").body("animal.dam", equalTo(north.south.number(dam)));
    }

    @Test
    void nobody_is_asked_and_nothing_is_planned_across_nodes() {
        var north = new North();
        var male = north.south.shown(14, Sex.MALE, GROWN, null, null);
        for (int i = 0; i < 5; i++) {
            north.south.skeleton(Sex.MALE, null, null);
        }
        north.south.tell();
        north.colony
                .get(WREN, "/animals/" + north.of013 + "/unnamed-partners")
                .statusCode(409)
                .body("detail", containsString("Animals on other nodes are not among them"));
        var pairOn = LocalDate.now(ZoneOffset.UTC).plusDays(200).toString();
        north.colony
                .post(
                        WREN,
                        "/season-drafts",
                        Map.of(
                                "pairOn",
                                pairOn,
                                "together",
                                List.of(Map.of("dam", north.of013, "sire", north.south.number(male)))))
                .statusCode(422)
                .body("type", equalTo("/problems/no-candidates"))
                .body("detail", containsString("another node (U)"));
        var plan = Seasons.of(north.colony).draft(Map.of("pairOn", pairOn, "litters", 1));
        plan.body("plan.litters.size()", equalTo(1));
        assertThat(plan.extract().asString()).doesNotContain(north.south.number(male));
    }
}
