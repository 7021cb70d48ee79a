package org.demebook.litter;

import static org.demebook.Colony.WREN;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;

/** Litters as they are sent; the test says what its rule is about. */
public final class NewLitters {
    private NewLitters() {}

    /** Live-born only. */
    public static Map<String, Object> litter(String dam, String born, int liveBorn) {
        return litter(dam, born, liveBorn, 0, 0);
    }

    public static Map<String, Object> litter(String dam, String born, int liveBorn, int stillborn, int unfertilised) {
        var litter = new HashMap<String, Object>();
        litter.put("dam", dam);
        litter.put("born", born);
        litter.put("liveBorn", liveBorn);
        litter.put("stillborn", stillborn);
        litter.put("unfertilised", unfertilised);
        litter.put("ovaFound", liveBorn + stillborn + unfertilised);
        return litter;
    }

    public static Map<String, Object> with(Map<String, Object> litter, String field, Object value) {
        var changed = new HashMap<>(litter);
        changed.put(field, value);
        return changed;
    }

    public static Map<String, Object> outcome(int liveBorn, int stillborn, int unfertilised) {
        return Map.of(
                "liveBorn", liveBorn,
                "stillborn", stillborn,
                "unfertilised", unfertilised,
                "ovaFound", liveBorn + stillborn + unfertilised);
    }

    /** The two were together from one day to the other. */
    public static void introduce(Colony colony, String female, String male, String fromOn, String untilOn) {
        colony.post(
                        WREN,
                        "/introductions",
                        Map.of("female", female, "male", male, "fromOn", fromOn, "untilOn", untilOn))
                .statusCode(201);
    }

    public static void noted(Colony colony, String female, String kind, String happenedOn) {
        colony.post(WREN, "/animals/" + female + "/breeding-signs", Map.of("kind", kind, "happenedOn", happenedOn))
                .statusCode(201);
    }

    public static Map<String, Object> workedOut() {
        return Map.of("kind", "worked-out");
    }

    public static Map<String, Object> known(String sire) {
        return Map.of("kind", "known", "animal", sire);
    }

    public static Map<String, Object> either(String sire, String other, boolean wholeLitter) {
        return Map.of(
                "kind",
                "candidates",
                "candidates",
                List.of(Map.of("animal", sire, "probability", 0.75), Map.of("animal", other, "probability", 0.25)),
                "wholeLitter",
                wholeLitter);
    }
}
