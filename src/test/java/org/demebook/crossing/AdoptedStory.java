package org.demebook.crossing;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.WREN;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.federation.Gone;
import org.demebook.federation.Upland;
import org.demebook.notation.StudbookNumber;
import org.demebook.protocol.AnimalId;

/** A node is gone: an animal that was on its way there comes back, one of its own gets a keeper here. */
final class AdoptedStory {
    private AdoptedStory() {}

    static void tell(Colony colony, Upland witness) {
        var gone = Upland.besides(colony);
        var given = colony.female(WREN);
        var sale = Map.of("animal", given, "kind", "sale", "node", gone.seat(), "to", "mara");
        String crossing =
                colony.post(WREN, "/crossings", sale).statusCode(201).extract().path("id");
        gone.fetch();
        gone.participant.accept(UUID.fromString(crossing));
        var own = gone.animal();
        gone.give();
        gone.settleHere();

        Gone.adopt(colony, gone, witness);
        place(colony, gone.called(given), Map.of("to", DOV));
        place(colony, own, Map.of("to", DOV, "number", number(colony, gone, 11)));
    }

    /** Another node is given an animal, and the server hears nothing of it. */
    static void releaseTo(Upland receiver, Upland gone, AnimalId animal) {
        gone.fetch();
        receiver.fetch();
        var record = Handed.json("mara", "MC", gone.seat(), 12, animal);
        var transfer =
                gone.participant.offer(animal, receiver.id(), Instant.now().plusSeconds(86_400), record);
        receiver.hear(gone);
        receiver.participant.accept(transfer);
        gone.hear(receiver);
        gone.participant.settle();
    }

    static String number(Colony colony, Upland node, long serial) {
        return new StudbookNumber(colony.code, node.seat(), serial).toString();
    }

    static void place(Colony colony, AnimalId animal, Map<String, String> placement) {
        colony.post(WREN, "/adopted-animals/" + animal + "/placement", placement)
                .statusCode(200);
    }
}
