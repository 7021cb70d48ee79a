package org.demebook.start;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

/** A plan for the coming season of the demo world, computed and issued as a coordinator would. */
record DemoSeason(DemoClient client, ObjectMapper json, String code, Clock clock) {
    private static final int DAYS_AHEAD = 180;
    private static final int LITTERS = 6;
    private static final int LONGEST_SECONDS = 60;

    /** Nothing where there is a plan: of a node that has the demo world from before, too. */
    void planOnce(String coordinator) throws IOException, InterruptedException {
        if (client.get(coordinator, path("season-plans")).get("items").isEmpty()) {
            plan(coordinator);
        }
    }

    private void plan(String coordinator) throws IOException, InterruptedException {
        var wanted = json.createObjectNode()
                .put(
                        "pairOn",
                        LocalDate.now(clock.withZone(ZoneOffset.UTC))
                                .plusDays(DAYS_AHEAD)
                                .toString())
                .put("littersAtMost", LITTERS);
        var draft = client.post(coordinator, path("season-drafts"), wanted);
        var id = draft.get("id").asText();
        for (int waited = 0; !draft.get("state").asText().equals("ready"); waited++) {
            if (waited > 10 * LONGEST_SECONDS) {
                throw new IllegalStateException("the season's plan is " + draft.get("state"));
            }
            Thread.sleep(100);
            draft = client.get(coordinator, path("season-drafts/" + id));
        }
        client.post(coordinator, path("season-plans"), json.createObjectNode().put("draft", id));
    }

    /** The plan in force; its id is another on every node. */
    UUID inForce(String token) throws IOException, InterruptedException {
        return UUID.fromString(
                client.get(token, path("season-plans")).at("/items/0/id").asText());
    }

    private String path(String below) {
        return "/api/v1/populations/" + code + "/" + below;
    }
}
