package org.demebook.consent;

import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;

import java.util.List;
import java.util.Map;
import org.demebook.Colony;

/** Four households whose animals may be computed with and not be seen, each with a male that is proposed to the others. */
final class Seekers {
    private static final List<String> KEEPERS = List.of(WREN, INES, DOV, OUTSIDER);

    final Things things = new Things();
    private final Colony colony = things.colony;

    Seekers() {
        Colony.token(OUTSIDER);
        colony.post(WREN, "/members", Map.of("name", OUTSIDER, "role", "member"))
                .statusCode(200);
        colony.post(OUTSIDER, "/collections", Map.of("label", "racks by the door"))
                .statusCode(201);
        for (var keeper : KEEPERS) {
            colony.share(keeper, "compute-only");
            colony.male(keeper);
        }
    }

    /** An open approach for a fresh female of the one to the male of the other; returns its id. */
    String approach(String asks, String asked) {
        var animal = colony.female(asks);
        var body = Map.of("animal", animal, "partner", pseudonym(asks, animal, asked));
        return colony.post(asks, "/approaches", body).statusCode(201).extract().path("id");
    }

    /** What the male of another is called for this animal. Earlier approaches are as if made in another month: few may be made in one. */
    String pseudonym(String asks, String animal, String asked) {
        change(
                "update demebook.approach set proposed_on = proposed_on - 40 where population_id ="
                        + " (select population_id from demebook.journal_head where code = ?)",
                colony.code);
        colony.get(asks, "/animals/" + animal + "/unnamed-partners").statusCode(200);
        return ask(
                        "select u.pseudonyms[array_position(u.partner_ids, p.id)] from demebook.unnamed_partners u"
                                + " join demebook.animal a on a.population_id = u.population_id and a.id = u.animal_id"
                                + " join demebook.animal p on p.population_id = u.population_id and p.id = any (u.partner_ids)"
                                + " join demebook.collection_keeper c on c.population_id = p.population_id"
                                + " and c.collection_id = p.collection_id"
                                + " join demebook.keeper k on k.id = c.keeper_id"
                                + " where a.number = ? and k.name = ?",
                        animal,
                        asked)
                .get(0);
    }
}
