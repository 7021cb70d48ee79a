package org.demebook.breeding;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.breeding.Notes.introduce;
import static org.demebook.breeding.Notes.noted;
import static org.demebook.breeding.Notes.sign;

import java.util.Map;
import org.demebook.Colony;

/** One of everything that this room writes down. */
public final class BreedingStory {
    private BreedingStory() {}

    public static void tell(Colony colony) {
        var female = colony.female(WREN);
        var male = colony.male(WREN);
        var id = introduce(colony, WREN, female, male, "2026-01-05", null);
        colony.post(WREN, "/introductions/" + id + "/end", Map.of("untilOn", "2026-02-20"))
                .statusCode(200);
        as(WREN).header(
                        "If-Match",
                        as(WREN).get(colony.path("/introductions/" + id)).header("ETag"))
                .body(Map.of("fromOn", "2026-01-06", "untilOn", "2026-02-19", "notes", " "))
                .put(colony.path("/introductions/" + id))
                .then()
                .statusCode(200);
        var never = introduce(colony, WREN, female, colony.male(WREN), "2026-01-05", "2026-01-06");
        colony.post(WREN, "/introductions/" + never + "/withdrawal", Map.of("reason", "another female"))
                .statusCode(200);

        noted(colony, WREN, female, sign("copulation", "2026-01-20", Map.of("male", male)));
        noted(colony, WREN, female, sign("laying", "2026-06-20", Map.of("eggs", 3, "notes", "")));
        noted(
                colony,
                WREN,
                female,
                sign("labour-started", "2026-06-29", Map.of("happenedAt", "2026-06-29T02:10:00.1234Z")));
        var shed = noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-15"));
        as(WREN).header(
                        "If-Match",
                        as(WREN).get(colony.path("/breeding-signs/" + shed)).header("ETag"))
                .body(sign("post-ovulation-shed", "2026-03-14", Map.of("howKnown", "skin-found")))
                .put(colony.path("/breeding-signs/" + shed))
                .then()
                .statusCode(200);
        var ordinary = noted(colony, WREN, female, sign("post-ovulation-shed", "2026-02-01"));
        colony.post(WREN, "/breeding-signs/" + ordinary + "/withdrawal", Map.of("reason", "an ordinary shed"))
                .statusCode(200);
    }
}
