package org.demebook.incubation;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;

import java.util.Map;
import org.demebook.Colony;

/** One of everything that this room writes down. */
public final class IncubationStory {
    private IncubationStory() {}

    public static void tell(Colony colony) {
        describe(colony, "egg-laying");
        String id = colony.post(
                        WREN,
                        "/animals/" + colony.female(WREN) + "/incubations",
                        Map.of(
                                "startedOn",
                                "2026-04-01",
                                "setPoint",
                                Map.of("value", 88.5, "unit", "f"),
                                "eggs",
                                6,
                                "notes",
                                " "))
                .statusCode(201)
                .extract()
                .path("id");
        colony.post(
                        WREN,
                        "/incubations/" + id + "/readings",
                        Map.of("readAt", "2026-04-02T08:00:00Z", "temperature", Map.of("value", 31.25, "unit", "c")))
                .statusCode(200);
        describe(colony, "live-bearing");
    }

    static void describe(Colony colony, String birthMode) {
        as(WREN).header("If-Match", as(WREN).get(colony.path("")).header("ETag"))
                .body(Map.of(
                        "code", colony.code,
                        "name", "Marrowfin Cay",
                        "taxon", "insular snake",
                        "locality", "Marrowfin Cay",
                        "birthMode", birthMode))
                .put(colony.path(""))
                .then()
                .statusCode(200);
    }
}
