package org.demebook.programme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** What came of a plan: 020 × 014 are dov's and ines's, 013 × 006 wren's and oyelaran's. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class OutcomeTest {
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);
    private static final LocalDate PAIR_ON = TODAY.plusMonths(6);

    private static String planned(Marrowfin own) {
        return Seasons.of(own.colony)
                .issued(Map.of(
                        "pairOn",
                        PAIR_ON,
                        "litters",
                        2,
                        "together",
                        List.of(
                                Map.of("dam", own.number(20), "sire", own.number(14)),
                                Map.of("dam", own.number(13), "sire", own.number(6)))));
    }

    /** As if animals were to be put together on that day. */
    private static void pairedOn(String plan, LocalDate day) {
        change(
                "update demebook.season_plan set pair_on = ?, body ="
                        + " regexp_replace(body, '\"pairOn\":\"[0-9-]+\"', '\"pairOn\":\"" + day + "\"') where id = ?",
                day,
                UUID.fromString(plan));
    }

    private static ValidatableResponse outcome(Colony colony, String keeper, String plan) {
        return colony.get(keeper, "/season-plans/" + plan + "/outcome").statusCode(200);
    }

    @Test
    void the_plan_is_held_against_what_was_born() {
        var own = Marrowfin.settled();
        var colony = own.colony;
        var plan = planned(own);
        pairedOn(plan, TODAY.minusMonths(10));
        var issued = colony.get(WREN, "/season-plans/" + plan).extract().jsonPath();
        outcome(colony, WREN, plan)
                .body("litters.what", contains("not-yet", "not-yet"))
                .body("geneDiversityExpected", equalTo(issued.getFloat("ofTheLiving.after")))
                .body("geneDiversityNow", equalTo(issued.getFloat("ofTheLiving.now")))
                .body("agreed", equalTo(0))
                .body("born", equalTo(0))
                .body("youngAlive", equalTo(0));

        var born = TODAY.minusMonths(2).toString();
        colony.young(DOV, "female", born, own.number(20), own.number(14));
        var dead = colony.young(DOV, "male", born, own.number(20), own.number(14));
        colony.put(DOV, dead, "/death", Map.of("on", TODAY.toString())).statusCode(200);
        colony.young(WREN, "male", born, own.number(13), own.number(14));
        var as = "litters.find { it.dam == '" + own.number(20) + "' }";
        outcome(colony, WREN, plan)
                .body("litters.what", containsInAnyOrder("born", "other-sire"))
                .body(as + ".what", equalTo("born"))
                .body(as + ".bornOn", equalTo(born))
                .body(as + ".young", equalTo(2))
                .body(as + ".alive", equalTo(1))
                .body("born", equalTo(1))
                .body("youngAlive", equalTo(1))
                // a chance of 0.7 of two young each: what a draft reckons with when nothing is said
                .body("youngReckonedWith", equalTo(2.8f));
        // figures of today are those of the gene pool, which is held against the worked pedigree elsewhere
        assertThat(outcome(colony, WREN, plan).extract().<Float>path("geneDiversityNow"))
                .isEqualTo(colony.get(WREN, "/gene-pool").extract().<Float>path("geneDiversity"));

        pairedOn(plan, TODAY.minusYears(2));
        outcome(colony, WREN, plan).body("litters.what", contains("none", "none"));
    }

    @Test
    void a_member_reads_of_the_litters_of_their_own_animals_alone() {
        var own = Marrowfin.settled();
        var colony = own.colony;
        var plan = planned(own);
        for (var keeper : List.of(DOV, INES)) {
            outcome(colony, keeper, plan)
                    .body("litters.dam", contains(own.number(20)))
                    .body("geneDiversityExpected", nullValue());
        }
        outcome(colony, OYELARAN, plan).body("litters.sire", contains(own.number(6)));
        outcome(colony, WREN, plan).body("litters", hasSize(2));
    }

    @Test
    void births_that_a_member_may_not_see_change_no_byte() {
        var own = Marrowfin.settledPrivate();
        var colony = own.colony;
        for (var keeper : List.of(INES, DOV, OYELARAN)) {
            colony.post(
                            keeper,
                            "/grants",
                            Map.of(
                                    "recipient", Map.of("kind", "coordinators"),
                                    "fieldGroups", List.of("identity", "parentage"),
                                    "purposes", List.of("pedigree-view", "pairing-computation"),
                                    "actions", List.of("read")))
                    .statusCode(201);
        }
        var plan = planned(own);
        pairedOn(plan, TODAY.minusMonths(10));
        var before = outcome(colony, INES, plan).extract().asString();
        var young = Colony.animal("female", TODAY.minusMonths(2).toString());
        young.put("dam", own.number(20));
        colony.register(DOV, young);
        assertThat(outcome(colony, INES, plan).extract().asString()).isEqualTo(before);
        outcome(colony, INES, plan)
                .body("litters.what", everyItem(equalTo("not-yet")))
                .body("litters[0].dam", nullValue());
        outcome(colony, WREN, plan)
                .body("litters.find { it.dam == '" + own.number(20) + "' }.what", equalTo("other-sire"));
    }
}
