package org.demebook.planning;

import static org.demebook.Colony.WREN;

import java.util.Map;
import org.demebook.Colony;

/** One of everything that may be said of which animals are to breed. */
public final class PlanningStory {
    private PlanningStory() {}

    public static void tell(Colony colony) {
        var lifted = colony.female(WREN);
        var held = colony.male(WREN);
        for (var animal : new String[] {lifted, held}) {
            colony.put(WREN, animal, "/breeding-hold", Map.of("reason", "thin after the move"))
                    .statusCode(200);
        }
        colony.post(WREN, "/animals/" + lifted + "/breeding-hold/lifting", Map.of("reason", "eats again"))
                .statusCode(200);
        var doubtful = Colony.animal("female", "2024-06-01");
        doubtful.put("sire", Map.of("kind", "known", "animal", held, "doubtful", true));
        colony.register(WREN, doubtful);
    }
}
