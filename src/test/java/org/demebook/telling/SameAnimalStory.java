package org.demebook.telling;

import static org.demebook.Colony.WREN;

import java.util.Map;
import org.demebook.Colony;
import org.demebook.federation.Upland;

/** An animal is said to be one of another node, and the other way round; each is taken back. */
public final class SameAnimalStory {
    private static final String CLAIMS = "/federation/same-animal-claims";

    private SameAnimalStory() {}

    public static void tell(Colony colony) {
        var upland = Upland.besides(colony);
        var animal = colony.female(WREN);
        var claim = Map.of("animal", animal, "other", upland.entered().toString());
        String made = colony.post(WREN, CLAIMS, claim).statusCode(201).extract().path("id");
        answer(colony, made + "/reversal");
        var theirs = upland.participant.claimSame(upland.animal(), upland.called(animal));
        upland.give();
        answer(colony, theirs + "/confirmation");
        answer(colony, theirs + "/reversal");
    }

    private static void answer(Colony colony, String below) {
        colony.post(WREN, CLAIMS + "/" + below, Map.of()).statusCode(200);
    }
}
