package org.demebook.handover;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;

import io.restassured.response.ValidatableResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.demebook.Colony;

/** A young of Wren's that grows up: born 60 days ago of two animals of hers, with what she wrote down of it. */
final class Young {
    static final LocalDate TODAY = LocalDate.now(Clock.systemUTC());
    static final LocalDate BORN = TODAY.minusDays(60);
    private static final AtomicInteger TRANSPONDERS = new AtomicInteger();

    static final String MARK = "broken stripe № 3, 2 × <b>white</b> & chin";

    final Colony colony;
    final String dam;
    final String sire;
    final String transponder = "9810000%08d".formatted(TRANSPONDERS.incrementAndGet());
    final String number;

    Young(Colony colony) {
        this(colony, "captive-bred");
    }

    Young(Colony colony, String originOfItsDam) {
        this.colony = colony;
        dam = parent("female", originOfItsDam);
        sire = parent("male", "wild-caught");
        var young = animal("female", BORN.toString());
        young.putAll(Map.of(
                "origin",
                "captive-bred",
                "sourceCode",
                "F",
                "dam",
                dam,
                "sire",
                Map.of("kind", "known", "animal", sire),
                "ownReference",
                "rack 3 tub 7 " + dam,
                "marks",
                List.of(MARK),
                "transponders",
                List.of(transponder)));
        number = colony.register(WREN, young);
    }

    private String parent(String sex, String origin) {
        var parent = animal(sex, "2020-06-01");
        parent.put("origin", origin);
        return colony.register(WREN, parent);
    }

    /** A first shed, a gain, and four meals of which the last ones were taken or not. */
    Young reared(String... lastMeals) {
        record(Map.of("kind", "measures", "on", BORN.plusDays(1).toString(), "mass", grams("28.4")));
        record(Map.of("kind", "shed", "on", BORN.plusDays(10).toString(), "complete", true));
        for (int i = 0; i < lastMeals.length; i++) {
            var on = TODAY.minusDays(4 + 6L * (lastMeals.length - 1 - i));
            record(Map.of("kind", "meal", "on", on.toString(), "outcome", lastMeals[i], "prey", "pinky mouse"));
        }
        record(Map.of("kind", "measures", "on", TODAY.minusDays(2).toString(), "mass", grams("41")));
        record(Map.of("kind", "health-note", "on", TODAY.minusDays(2).toString(), "text", "a secret worry"));
        record(Map.of(
                "kind",
                "test",
                "sampledOn",
                TODAY.minusDays(20).toString(),
                "agent",
                "reptarenavirus",
                "method",
                "RT-PCR",
                "result",
                "negative"));
        return this;
    }

    private static Map<String, Object> grams(String value) {
        return Map.of("value", value, "unit", "g");
    }

    private void record(Map<String, Object> record) {
        colony.post(WREN, "/animals/" + number + "/care-records", record).statusCode(201);
    }

    ValidatableResponse issue(String keeper, Map<String, Object> sheet) {
        return colony.post(keeper, "/animals/" + number + "/handover-sheets", sheet);
    }

    /** Its address below the population's. */
    String issued(String keeper) {
        return "/handover-sheets/"
                + issue(keeper, Map.of("kind", "sale"))
                        .statusCode(201)
                        .extract()
                        .<String>path("id");
    }

    String transferTo(String keeper) {
        return colony.post(WREN, "/transfers", Map.of("animal", number, "kind", "sale", "to", keeper))
                .statusCode(201)
                .extract()
                .path("transfer.id");
    }

    static Map<String, Object> with(Map<String, Object> body, String field, Object value) {
        var changed = new HashMap<>(body);
        changed.put(field, value);
        return changed;
    }
}
