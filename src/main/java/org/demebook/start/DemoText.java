package org.demebook.start;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;

/** What the demo prints: where it is, who may sign in with what, and lines that do the main job and show a keeper's day. */
final class DemoText {
    private static final String TEXT = """

              Demebook is ready: http://127.0.0.1:%1$d   (contract: /openapi, health: /q/health)
              State is kept in %2$s; %3$s. Ctrl-C stops everything.

              Who may sign in (password of all four: %4$s)
            %5$s
              In a browser: open http://127.0.0.1:%1$d and sign in as ines. Today shows the young that Wren offers her: accept it,
              open it, look at its ancestry, then ask under Pairing for its partners. Wren plans the season; her year with young is
              http://127.0.0.1:%1$d/populations/%9$s/today.

              The same by program. The main job in three lines: Ines takes over the young that Wren offers her, looks up its ancestry,
              and asks which pairs across the collections would be best. Sign in first:

            INES=$(curl -s http://127.0.0.1:%1$d/api/v1/tokens -H 'Content-Type: application/json' -H 'Accept: text/plain' -d '{"name":"ines","password":"%4$s"}')

            curl -s -X POST http://127.0.0.1:%1$d/api/v1/populations/%6$s/transfers/%7$s/acceptance -H "Authorization: Bearer $INES" -H 'Content-Type: application/json' -H 'Idempotency-Key: first-purchase' -d '{}'

            curl -s "http://127.0.0.1:%1$d/api/v1/populations/%6$s/animals/%8$s/ancestry?generations=5" -H "Authorization: Bearer $INES"

            curl -s "http://127.0.0.1:%1$d/api/v1/populations/%6$s/pairings?limit=5" -H "Authorization: Bearer $INES"

              A keeper's day: what is to be done in Wren's rooms, and which of her females are awaited to bear and when.

            WREN=$(curl -s http://127.0.0.1:%1$d/api/v1/tokens -H 'Content-Type: application/json' -H 'Accept: text/plain' -d '{"name":"wren","password":"%4$s"}')

            curl -s "http://127.0.0.1:%1$d/api/v1/populations/%9$s/care-tasks?limit=10" -H "Authorization: Bearer $WREN"

            curl -s http://127.0.0.1:%1$d/api/v1/populations/%9$s/due-windows -H "Authorization: Bearer $WREN"

              The coming season: the plan that Wren had computed and issued, and what it recommends for her own animals.

            curl -s http://127.0.0.1:%1$d/api/v1/populations/%6$s/season-plans/%10$s -H "Authorization: Bearer $WREN"

            curl -s http://127.0.0.1:%1$d/api/v1/populations/%6$s/season-plans/%10$s/recommendations -H "Authorization: Bearer $WREN"

              The published counts need no sign-in: http://127.0.0.1:%1$d/populations/%6$s/counts

            """;

    private DemoText() {}

    static void print(
            JsonNode world,
            DemoClient client,
            String inesToken,
            DemoSeason season,
            int port,
            String state,
            boolean fresh)
            throws IOException, InterruptedException {
        var code = world.at("/population/code").asText();
        var animal = world.at("/offer/body/animal").asText();
        var keepers = new StringBuilder();
        for (var keeper : world.get("keepers")) {
            keepers.append("    %-10s %s, %s%n"
                    .formatted(
                            keeper.get("name").asText(),
                            keeper.get("fullName").asText(),
                            keeper.get("role").asText()));
        }
        System.out.printf(
                TEXT,
                port,
                state,
                fresh ? "it was made just now" : "this start goes on with what was there",
                world.get("password").asText(),
                keepers,
                code,
                offerOf(client, inesToken, code, animal),
                animal,
                world.at("/year/population/code").asText(),
                season.inForce(inesToken));
        System.out.flush();
    }

    /** The transfer that Wren offered; its id is another on every node. */
    private static String offerOf(DemoClient client, String token, String code, String animal)
            throws IOException, InterruptedException {
        for (var transfer :
                client.get(token, "/api/v1/populations/" + code + "/transfers").get("items")) {
            if (transfer.at("/animal/number").asText().equals(animal)) {
                return transfer.get("id").asText();
            }
        }
        throw new IllegalStateException("the offer of " + animal + " is not there");
    }
}
