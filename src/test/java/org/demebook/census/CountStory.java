package org.demebook.census;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;

import java.util.Map;
import org.demebook.Colony;

/** Everything that can happen to counts, once. */
public final class CountStory {
    private CountStory() {}

    public static void tell(Colony colony) {
        as(WREN).header("If-Match", "\"0\"")
                .body(Map.of("fewestKeepers", 3, "percent", 15))
                .put(colony.path("/count-rules"))
                .then()
                .statusCode(200);
        for (var waived : new boolean[] {true, false}) {
            as(INES).body(Map.of("waived", waived))
                    .put(colony.path("/count-waiver"))
                    .then()
                    .statusCode(200);
        }
        as(DOV).body(Map.of("waived", true))
                .put(colony.path("/count-waiver"))
                .then()
                .statusCode(200);
        everyoneHasSome(colony);
        colony.post(WREN, "/count-releases", Map.of()).statusCode(201);
    }

    /** Two adults of each sex, and a young of each, with each of three keepers. */
    static void everyoneHasSome(Colony colony) {
        for (var keeper : new String[] {WREN, INES, DOV}) {
            for (var sex : new String[] {"female", "male"}) {
                colony.register(keeper, animal(sex, "2019-06-01"));
                colony.register(keeper, animal(sex, "2019-06-01"));
                colony.register(keeper, animal(sex, "2025-01-15"));
            }
        }
    }
}
