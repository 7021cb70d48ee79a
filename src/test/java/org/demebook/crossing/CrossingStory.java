package org.demebook.crossing;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.federation.Upland;

/** Every way in which a crossing goes, at the giver's and at the receiver's. */
public final class CrossingStory {
    private final Colony colony;
    private final Upland upland;
    private int serial;

    private CrossingStory(Colony colony) {
        this.colony = colony;
        this.upland = Upland.besides(colony);
    }

    public static void tell(Colony colony) {
        var story = new CrossingStory(colony);
        story.give();
        story.receive();
        AdoptedStory.tell(colony, story.upland);
    }

    private void give() {
        var animal = colony.female(WREN);
        upland.participant.reject(offered(animal));
        upland.exchange();
        answer(WREN, offered(animal), "withdrawal", Map.of("reason", "she sheds"));
        upland.participant.accept(offered(animal));
        upland.exchange();
        // and it comes back
        var between = upland.called(animal);
        var own = Long.parseLong(animal.split("-")[2]);
        var back = upland.offer(between, Handed.json(INES, colony.code, "H", own, between));
        upland.give();
        answer(INES, back, "acceptance", Map.of());
        upland.exchange();
        // one stays on offer, one on its way
        offered(colony.female(WREN));
        upland.participant.accept(offered(colony.female(WREN)));
        upland.give();
    }

    private UUID offered(String animal) {
        var offer = new HashMap<String, Object>(Map.of("animal", animal, "kind", "exchange", "node", upland.seat()));
        offer.putAll(Map.of("to", "mara", "note", "as agreed", "handedOverOn", "2026-03-29"));
        String id =
                colony.post(WREN, "/crossings", offer).statusCode(201).extract().path("id");
        upland.fetch();
        return UUID.fromString(id);
    }

    private void receive() {
        answer(DOV, comesIn(DOV, Duration.ofDays(14)), "refusal", Map.of());
        answer(DOV, comesIn(DOV, Duration.ofDays(14)), "acceptance", Map.of());
        upland.exchange();
        comesIn(DOV, Duration.ZERO);
        upland.exchange();
        comesIn(DOV, Duration.ofDays(14));
    }

    private UUID comesIn(String to, Duration stands) {
        var animal = upland.animal();
        serial += 2;
        var id = upland.offer(animal, Handed.json(to, colony.code, upland.seat(), serial, animal), stands);
        upland.give();
        return id;
    }

    private void answer(String keeper, UUID id, String answer, Map<String, ?> body) {
        colony.post(keeper, "/crossings/" + id + "/" + answer, body).statusCode(200);
    }
}
