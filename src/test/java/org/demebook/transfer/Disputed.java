package org.demebook.transfer;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;

import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.Map;
import org.demebook.Colony;

/** What the sides of a dispute send. Days lie in 2025, so that they are past wherever the clock stands. */
final class Disputed {
    final Colony colony;
    final Handover handover;

    Disputed(Colony colony) {
        this.colony = colony;
        this.handover = new Handover(colony);
    }

    ValidatableResponse report(String keeper, String animal, String seenOn) {
        return colony.post(
                keeper,
                "/animals/" + animal + "/disputes",
                Map.of("seenOn", seenOn, "note", "in her rack, transponder read"));
    }

    /** A report of wren's; its id. */
    String reported(String animal) {
        return reported(WREN, animal);
    }

    String reported(String keeper, String animal) {
        return report(keeper, animal, "2025-09-05").statusCode(201).extract().path("id");
    }

    ValidatableResponse get(String keeper, String id) {
        return colony.get(keeper, "/disputes/" + id);
    }

    ValidatableResponse end(String keeper, String id, String how) {
        return colony.post(keeper, "/disputes/" + id + "/" + how, Map.of("reason", "we looked again"));
    }

    ValidatableResponse settle(String keeper, String id, String outcome) {
        return colony.post(
                keeper,
                "/disputes/" + id + "/settlement",
                Map.of("outcome", outcome, "reason", "the vet read the transponder there"));
    }

    /** Wren's animal, sold to ines, who sold it on in an accepted sale, handed over on a day. */
    String soldOn(String to, String handedOverOn) {
        var animal = soldToInes();
        var sale = new HashMap<String, Object>(Map.of("animal", animal, "kind", "sale", "to", to));
        sale.put("handedOverOn", handedOverOn);
        String id =
                colony.post(INES, "/transfers", sale).statusCode(201).extract().path("transfer.id");
        handover.answer(to, id, "acceptance").statusCode(200);
        return animal;
    }

    String soldToInes() {
        var animal = colony.female(WREN);
        handover.accepted(WREN, animal, "sale", INES);
        return animal;
    }
}
