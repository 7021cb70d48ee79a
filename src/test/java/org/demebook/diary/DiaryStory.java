package org.demebook.diary;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;

/** One of everything that can be written down, corrected, ended and withdrawn. */
public final class DiaryStory {
    private DiaryStory() {}

    public static void tell(Colony colony) {
        var animal = colony.female(WREN);
        var ids = write(colony, animal);
        var meal = "/care-records/" + ids.get(2);
        as(WREN).header("If-Match", as(WREN).get(colony.path(meal)).header("ETag"))
                .body(Map.of("kind", "meal", "on", "2026-03-03", "outcome", "refused", "prey", " "))
                .put(colony.path(meal))
                .then()
                .statusCode(200);
        for (var open : List.of(ids.get(6), ids.get(9))) {
            colony.post(WREN, "/care-records/" + open + "/end", Map.of("on", "2026-06-01"))
                    .statusCode(200);
        }
        colony.post(WREN, "/care-records/" + ids.get(0) + "/withdrawal", "{}").statusCode(200);
    }

    /** One of each kind, some with every field and some with none that can be left out. */
    private static List<String> write(Colony colony, String animal) {
        var records = List.of(
                entry(animal, "shed", Map.of("on", "2026-03-01")),
                entry(animal, "shed", Map.of("on", "2026-03-02", "complete", false)),
                entry(
                        animal,
                        "meal",
                        Map.of("on", "2026-03-03", "outcome", "taken", "prey", "rat", "preyMass", in("0.75", "oz"))),
                entry(animal, "measures", Map.of("on", "2026-03-04", "mass", in("2.75", "lb"))),
                entry(
                        animal,
                        "measures",
                        Map.of("on", "2026-03-05", "length", in("60.25", "in"), "lengthKind", "total")),
                entry(animal, "move", Map.of("on", "2026-03-06", "place", "rack B, tub 4")),
                entry(animal, "health-note", Map.of("on", "2026-03-07", "text", "wheezes")),
                entry(
                        animal,
                        "test",
                        Map.of(
                                "sampledOn", "2026-03-08",
                                "agent", "reptarenavirus",
                                "method", "RT-PCR",
                                "sample", "swab",
                                "result", "negative",
                                "laboratoryReference", "L-17",
                                "validUntil", "2026-12-31")),
                entry(animal, "test", Map.of("sampledOn", "2026-03-09", "agent", "mites", "result", "unclear")),
                entry(animal, "quarantine", Map.of("from", "2026-03-10")),
                entry(
                        animal,
                        "quarantine",
                        Map.of("from", "2026-03-11", "until", "2026-06-11", "endedOn", "2026-06-10")));
        return colony.post(WREN, "/care-records", Map.of("records", records))
                .statusCode(200)
                .extract()
                .path("records.id");
    }

    static Map<String, Object> entry(String animal, String kind, Map<String, ?> fields) {
        var entry = new HashMap<String, Object>(fields);
        entry.put("animal", animal);
        entry.put("kind", kind);
        return entry;
    }

    static Map<String, Object> in(String value, String unit) {
        return Map.of("value", new java.math.BigDecimal(value), "unit", unit);
    }
}
