package org.demebook.programme;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.Marrowfin.OYELARAN;

import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.Marrowfin;

/** A population of the worked pedigree with a plan in force: 020 × 014, dov's and ines's, and 013 × 006, wren's and oyelaran's. */
final class AnsweredPlan {
    static final LocalDate PAIR_ON = LocalDate.now(ZoneOffset.UTC).plusMonths(6);

    final Marrowfin own;
    final Colony colony;
    final String plan;
    final String litter;
    final String other;

    AnsweredPlan(Marrowfin own) {
        this.own = own;
        colony = own.colony;
        plan = Seasons.of(colony)
                .issued(Map.of(
                        "pairOn",
                        PAIR_ON,
                        "litters",
                        2,
                        "together",
                        List.of(
                                Map.of("dam", own.number(20), "sire", own.number(14)),
                                Map.of("dam", own.number(13), "sire", own.number(6)))));
        litter = litterOf(plan, 20);
        other = litterOf(plan, 13);
    }

    String litterOf(String someplan, int dam) {
        return colony.get(WREN, "/season-plans/" + someplan)
                .statusCode(200)
                .extract()
                .path("litters.find { it.dam == '" + own.number(dam) + "' }.id");
    }

    ValidatableResponse answer(String keeper, String toLitter, String answer, String reason, String note) {
        return answer(keeper, plan, toLitter, answer, reason, note);
    }

    ValidatableResponse answer(
            String keeper, String toPlan, String toLitter, String answer, String reason, String note) {
        var body = new HashMap<String, Object>(Map.of("answer", answer));
        if (reason != null) {
            body.put("reason", reason);
        }
        if (note != null) {
            body.put("note", note);
        }
        return as(keeper)
                .body(body)
                .put(colony.path("/season-plans/" + toPlan + "/litters/" + toLitter + "/answer"))
                .then();
    }

    ValidatableResponse recommended(String keeper) {
        return colony.get(keeper, "/season-plans/" + plan + "/recommendations").statusCode(200);
    }

    /** What is recommended for one animal. */
    JsonPath recommended(String keeper, int animal) {
        return recommended(keeper)
                .extract()
                .jsonPath()
                .setRootPath("find { it.animal == '" + own.number(animal) + "' }");
    }

    ValidatableResponse answers() {
        return colony.get(WREN, "/season-plans/" + plan + "/answers").statusCode(200);
    }

    /** Everything about plans that a member reads. */
    List<String> reads(String keeper) {
        var reads = new ArrayList<String>();
        for (var address : List.of(
                "/season-plans",
                "/season-plans/" + plan + "/recommendations",
                "/season-plans/" + plan + "/outcome",
                "/care-tasks",
                "/grants",
                "/animals?limit=200")) {
            reads.add(address + " "
                    + colony.get(keeper, address).statusCode(200).extract().asString());
        }
        return reads;
    }

    /** Whose numbers and parents only the coordinator reads, to pair animals. */
    static AnsweredPlan shownToCoordinators() {
        var own = Marrowfin.settledPrivate();
        for (var keeper : List.of(WREN, INES, DOV, OYELARAN)) {
            own.colony
                    .post(
                            keeper,
                            "/grants",
                            Map.of(
                                    "recipient", Map.of("kind", "coordinators"),
                                    "fieldGroups", List.of("identity", "parentage"),
                                    "purposes", List.of("pedigree-view", "pairing-computation"),
                                    "actions", List.of("read")))
                    .statusCode(201);
        }
        return new AnsweredPlan(own);
    }
}
