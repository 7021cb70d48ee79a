package org.demebook.planning;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;

import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.keeper.RegionStory;

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
        terms(colony);
    }

    /** In regions that were fixed before; stated, stated anew, withdrawn, and stated again. */
    private static void terms(Colony colony) {
        for (var terms : List.of(
                Map.of("exchangeWith", List.of(), "notes", "one rack only"),
                Map.of(
                        "littersAtMost",
                        2,
                        "malesAwayAtMost",
                        1,
                        "farthestKilometres",
                        300,
                        "mayCrossBorders",
                        false))) {
            state(colony, terms);
        }
        var address = colony.path("/collections/" + RegionStory.collection(colony, WREN) + "/pairing-terms");
        Colony.as(WREN).delete(address).then().statusCode(200);
        state(colony, Map.of("exchangeWith", List.of("South"), "notes", "room again"));
        var other = colony.path("/collections/" + RegionStory.collection(colony, DOV) + "/pairing-terms");
        Colony.as(DOV).body(Map.of("exchangeWith", List.of())).put(other).then().statusCode(200);
        Colony.as(INES)
                .body(Map.of("littersAtMost", 0))
                .put(colony.path("/collections/" + RegionStory.collection(colony, INES) + "/pairing-terms"))
                .then()
                .statusCode(200);
        Colony.as(INES)
                .delete(colony.path("/collections/" + RegionStory.collection(colony, INES) + "/pairing-terms"))
                .then()
                .statusCode(200);
    }

    private static void state(Colony colony, Map<String, ?> terms) {
        Colony.as(WREN)
                .body(terms)
                .put(colony.path("/collections/" + RegionStory.collection(colony, WREN) + "/pairing-terms"))
                .then()
                .statusCode(200);
    }
}
