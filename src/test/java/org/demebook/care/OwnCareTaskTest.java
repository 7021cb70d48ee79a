package org.demebook.care;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.Map;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** Tasks that a keeper wrote down. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class OwnCareTaskTest extends InACollection {
    @Test
    void a_task_of_ones_own_is_done_once() {
        var key = added(WREN, Map.of("what", " order mice ", "dueOn", TODAY.toString()));
        colony.get(WREN, "/care-tasks/" + key)
                .body("what", equalTo("order mice"))
                .body("kind", equalTo("own"))
                .body("animal", nullValue());
        act(WREN, key, "completion", Map.of()).statusCode(200);
        list(WREN, "?until=" + TODAY.plusDays(400)).body("items", empty());
        act(WREN, key, "restoration", "{}").statusCode(200);
        list(WREN, "").body("items.key", contains(key));
    }

    @Test
    void a_recurring_task_is_due_again_its_days_after_it_was_done() {
        var first = added(WREN, Map.of("what", "weigh", "dueOn", TODAY.toString(), "everyDays", 14, "animal", animal));
        act(WREN, first, "postponement", Map.of("to", TODAY.plusDays(1).toString()))
                .statusCode(200);
        act(WREN, first, "completion", Map.of()).statusCode(200);
        list(WREN, "")
                .body("items", hasSize(1))
                .body("items[0].dueOn", equalTo(TODAY.plusDays(14).toString()))
                .body("items[0].key", not(equalTo(first)))
                .body("items[0].animal", equalTo(animal));

        act(WREN, first, "completion", Map.of("on", TODAY.minusDays(4).toString()))
                .statusCode(200);
        list(WREN, "").body("items.dueOn", contains(TODAY.plusDays(10).toString()));

        act(WREN, first, "restoration", "{}").statusCode(200);
        list(WREN, "")
                .body("items.key", contains(first))
                .body("items[0].dueOn", equalTo(TODAY.plusDays(1).toString()));
    }

    @Test
    void taking_back_an_earlier_time_leaves_the_next_one_where_it_is() {
        var first = added(WREN, Map.of("what", "weigh", "dueOn", TODAY.toString(), "everyDays", 3));
        act(WREN, first, "completion", Map.of()).statusCode(200);
        String second = list(WREN, "").extract().path("items[0].key");
        act(WREN, second, "completion", Map.of()).statusCode(200);
        String third = list(WREN, "").extract().path("items[0].key");
        act(WREN, first, "restoration", "{}").statusCode(200);
        list(WREN, "").body("items.key", contains(third));
    }

    @Test
    void a_task_of_ones_own_is_about_an_animal_in_ones_hands_and_lies_ahead() {
        var others = colony.female(INES);
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.toString(), "animal", others))
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.minusDays(9).toString()))
                .statusCode(422);
        add(WREN, Map.of("what", " ", "dueOn", TODAY.toString())).statusCode(422);
        add(WREN, Map.of("what", "feed\nBEGIN:VALARM", "dueOn", TODAY.toString()))
                .statusCode(422)
                .body("findings[0].field", equalTo("what"));
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.toString(), "everyDays", 0))
                .statusCode(422);
        var elsewhere = colony.post(WREN, "/collections", Map.of("label", "cellar"))
                .extract()
                .<String>path("id");
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.toString(), "animal", animal, "collection", elsewhere))
                .statusCode(422)
                .body("findings[0].field", equalTo("collection"));
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.toString()))
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-collection"));
    }
}
