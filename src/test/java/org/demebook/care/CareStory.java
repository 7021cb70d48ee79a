package org.demebook.care;

import static org.demebook.Colony.WREN;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import org.demebook.Colony;

/** One of everything that can happen to care tasks. */
public final class CareStory {
    private CareStory() {}

    public static void tell(Colony colony) {
        var today = LocalDate.now(ZoneOffset.UTC);
        var animal = colony.female(WREN);
        var weighing =
                add(colony, Map.of("what", "weigh", "dueOn", today.toString(), "everyDays", 7, "animal", animal));
        var order = add(colony, Map.of("what", "order mice", "dueOn", today.toString()));

        act(colony, weighing, "completion", Map.of("on", today.minusDays(1).toString()));
        act(colony, weighing, "completion", Map.of());
        act(colony, order, "postponement", Map.of("to", today.plusDays(3).toString()));
        act(colony, order, "restoration", Map.of());
        act(colony, order, "postponement", Map.of("to", today.plusDays(9).toString()));
        act(colony, order, "completion", Map.of());
        act(colony, order, "restoration", Map.of());
        act(colony, order, "silence", Map.of("scope", "task"));
        act(colony, order, "restoration", Map.of());

        var meal = GivenTasks.give(colony, CareKind.NEXT_MEAL, animal, today);
        act(colony, meal, "silence", Map.of("scope", "kind-of-animal"));
        act(colony, meal, "silence", Map.of("scope", "kind"));
        act(colony, meal, "completion", Map.of());
    }

    private static String add(Colony colony, Map<String, Object> task) {
        return colony.post(WREN, "/care-tasks", task).statusCode(201).extract().path("key");
    }

    private static void act(Colony colony, String key, String act, Map<String, Object> body) {
        colony.post(WREN, "/care-tasks/" + key + "/" + act, body).statusCode(200);
    }
}
