package org.demebook.programme;

import static org.assertj.core.api.Assertions.fail;
import static org.demebook.Colony.WREN;

import io.restassured.response.ValidatableResponse;
import java.time.Duration;
import java.util.Map;
import java.util.Set;
import org.demebook.Colony;

/** Plans of a population, as wren has them computed and issues them. */
public final class Seasons {
    private static final Duration LONGEST = Duration.ofSeconds(60);

    private final Colony colony;

    private Seasons(Colony colony) {
        this.colony = colony;
    }

    public static Seasons of(Colony colony) {
        return new Seasons(colony);
    }

    /** A draft that is over. */
    public ValidatableResponse draft(Map<String, Object> asked) {
        return over(started(asked));
    }

    /** Its id. */
    public String started(Map<String, Object> asked) {
        return colony.post(WREN, "/season-drafts", asked)
                .statusCode(202)
                .extract()
                .path("id");
    }

    public ValidatableResponse over(String draft) {
        long deadline = System.nanoTime() + LONGEST.toNanos();
        while (System.nanoTime() < deadline) {
            var answer = colony.get(WREN, "/season-drafts/" + draft).statusCode(200);
            if (!Set.of("waiting", "computing").contains(answer.extract().<String>path("state"))) {
                return answer;
            }
            pause();
        }
        return fail("the draft is not over after " + LONGEST);
    }

    /** The id of a plan that was computed and issued. */
    public String issued(Map<String, Object> asked) {
        return issue(draft(asked).extract().path("id"));
    }

    /** The id of the plan that a draft becomes. */
    public String issue(String draft) {
        return colony.post(WREN, "/season-plans", Map.of("draft", draft))
                .statusCode(201)
                .extract()
                .path("id");
    }

    private static void pause() {
        try {
            Thread.sleep(20);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
