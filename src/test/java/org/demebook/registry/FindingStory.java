package org.demebook.registry;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;

import java.util.List;
import java.util.Map;
import org.demebook.Colony;

/** What the journal can say of findings, for the test that replays it. */
public final class FindingStory {
    private FindingStory() {}

    public static void tell(Colony colony) {
        var dam = colony.female(WREN);
        colony.put(WREN, dam, "/death", Map.of("on", "2026-06-28")).statusCode(200);
        var removed = animal("unknown", "2026-06-29");
        removed.putAll(Map.of("dam", dam, "removedFromDeadDam", true));
        colony.register(WREN, removed);
        var late = animal("male", "2026-06-30");
        late.putAll(Map.of(
                "dam",
                dam,
                "sexDetermination",
                Map.of("method", "popping", "confidence", "presumed"),
                "transponders",
                List.of("0a1b-2c3d-4e"),
                "leave",
                List.of(Map.of("rule", "dam-died-before-birth", "reason", "the day of her death was noted late"))));
        late.put("locality", Map.of("certainty", "stated"));
        var young = colony.register(WREN, late);
        var doubtful = Map.of("locality", "Tern Skerry", "certainty", "doubtful");
        colony.put(WREN, young, "/locality", doubtful).statusCode(200);
        colony.put(WREN, young, "/locality", Map.of("certainty", "unknown")).statusCode(200);
        colony.put(
                        WREN,
                        young,
                        "/sex",
                        Map.of(
                                "sex",
                                "female",
                                "on",
                                "2026-09-01",
                                "sexDetermination",
                                Map.of("method", "dna", "confidence", "confirmed")))
                .statusCode(200);
    }
}
