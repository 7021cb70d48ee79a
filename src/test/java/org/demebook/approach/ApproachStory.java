package org.demebook.approach;

import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;

/** One of everything that may come of an approach. */
public final class ApproachStory {
    private ApproachStory() {}

    public static void tell(Colony colony) {
        Colony.token(OUTSIDER);
        colony.post(WREN, "/members", Map.of("name", OUTSIDER, "role", "member"))
                .statusCode(200);
        colony.post(OUTSIDER, "/collections", Map.of("label", "racks by the door"))
                .statusCode(201);
        for (var keeper : List.of(WREN, INES, DOV, OUTSIDER)) {
            colony.share(keeper, "compute-only");
            colony.male(keeper);
        }
        var one = colony.female(INES);
        var partners = partners(colony, one);
        answer(colony, propose(colony, one, partners.get(0), "She has bred twice."), "agreement");
        answer(colony, propose(colony, one, partners.get(1), " "), "refusal");
        var other = colony.female(INES);
        var others = partners(colony, other);
        answer(colony, INES, propose(colony, other, others.get(0), null), "withdrawal");
        answer(colony, INES, answer(colony, propose(colony, other, others.get(1), ""), "agreement"), "withdrawal");
    }

    private static List<String> partners(Colony colony, String animal) {
        return as(INES).get(colony.path("/animals/" + animal + "/unnamed-partners"))
                .then()
                .statusCode(200)
                .extract()
                .path("partners");
    }

    private static String propose(Colony colony, String animal, String partner, String words) {
        var body = words == null
                ? Map.of("animal", animal, "partner", partner)
                : Map.of("animal", animal, "partner", partner, "words", words);
        return colony.post(INES, "/approaches", body).statusCode(201).extract().path("id");
    }

    /** By whoever was asked. */
    private static String answer(Colony colony, String approach, String answer) {
        var asked = ask(
                "select k.name from demebook.approach a"
                        + " join demebook.collection_keeper c on c.population_id = a.population_id"
                        + " and c.collection_id = a.partner_collection_id"
                        + " join demebook.keeper k on k.id = c.keeper_id where a.id = ? order by k.name",
                UUID.fromString(approach));
        return answer(colony, asked.get(0), approach, answer);
    }

    private static String answer(Colony colony, String keeper, String approach, String answer) {
        colony.post(keeper, "/approaches/" + approach + "/" + answer, "{}").statusCode(200);
        return approach;
    }
}
