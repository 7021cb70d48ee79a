package org.demebook.start;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.demebook.keeper.Accounts;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * The demo world: with {@code -Ddemebook.demo=<folder>}, a fresh node is filled from it, through the API as a keeper's
 * program would, and the way in is printed. A node that has it already goes on with what became of it.
 */
@ApplicationScoped
class Demo {
    private static final Logger LOG = Logger.getLogger(Demo.class);

    // so that the printed lines still do something in a demo that is started again next season
    private static final int OFFERED_DAYS = 360;

    @ConfigProperty(name = "demebook.demo")
    Optional<Path> folder;

    @ConfigProperty(name = "quarkus.http.port")
    int port;

    @ConfigProperty(name = "demebook.state")
    String state;

    @Inject
    Accounts accounts;

    @Inject
    ObjectMapper json;

    @Inject
    Clock clock;

    void begin(@Observes @Priority(9000) StartupEvent started) {
        // in a thread of its own: the server answers once every observer of the start has returned
        folder.ifPresent(from -> new Thread(() -> tell(from), "demo").start());
    }

    private void tell(Path from) {
        try {
            var world = json.readTree(from.resolve("world.json").toFile());
            var client = new DemoClient(port, json);
            client.awaitServer();
            var fresh = openAccounts(world);
            if (!world.has("population")) {
                return; // the second node of a demo: it joins the population of the first
            }
            var tokens = signIn(client, world);
            var season =
                    new DemoSeason(client, json, world.at("/population/code").asText(), clock);
            if (fresh) {
                load(client, from, world, tokens);
                new DemoYear(client, json, from, world.get("year"), tokens).tell();
            }
            season.planOnce(tokens.get(world.at("/keepers/0/name").asText()));
            DemoText.print(world, client, tokens.get("ines"), season, port, state, fresh);
            if (DemoNodes.areTwo()) {
                DemoNodes.begin(client, port, state, from, world, json);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException e) {
            LOG.error("The demo world could not be loaded; the server itself runs", e);
        }
    }

    /** Whether the accounts were made now. */
    private boolean openAccounts(JsonNode world) {
        boolean fresh = false;
        for (var keeper : world.get("keepers")) {
            try {
                QuarkusTransaction.requiringNew()
                        .call(() -> accounts.open(
                                keeper.get("name").asText(),
                                keeper.get("fullName").asText(),
                                world.get("password").asText()));
                fresh = true;
            } catch (Refusal refusal) {
                if (refusal.type() != ProblemType.NAME_TAKEN) {
                    throw refusal;
                }
            }
        }
        return fresh;
    }

    private Map<String, String> signIn(DemoClient client, JsonNode world) throws IOException, InterruptedException {
        var tokens = new HashMap<String, String>();
        for (var keeper : world.get("keepers")) {
            var name = keeper.get("name").asText();
            var body = json.createObjectNode()
                    .put("name", name)
                    .put("password", world.get("password").asText());
            tokens.put(
                    name,
                    client.post(null, "/api/v1/tokens", body)
                            .get("access_token")
                            .asText());
        }
        return tokens;
    }

    private void load(DemoClient client, Path from, JsonNode world, Map<String, String> tokens)
            throws IOException, InterruptedException {
        var code = world.at("/population/code").asText();
        var population = "/api/v1/populations/" + code;
        var coordinator = tokens.get(world.at("/keepers/0/name").asText());
        client.post(coordinator, "/api/v1/populations", world.get("population"));
        for (var keeper : world.get("keepers")) {
            var name = keeper.get("name").asText();
            var member = json.createObjectNode()
                    .put("name", name)
                    .put("role", keeper.get("role").asText());
            if (!tokens.get(name).equals(coordinator)) {
                client.post(coordinator, population + "/members", member);
            }
            client.openCollection(
                    tokens.get(name),
                    population,
                    keeper.get("collection").asText(),
                    keeper.get("sharing").asText());
        }
        for (var sheet : world.get("sheets")) {
            var bytes = Files.readAllBytes(from.resolve(sheet.get("file").asText()));
            client.importSheet(tokens.get(sheet.get("keeper").asText()), population, bytes);
        }
        client.post(tokens.get(world.at("/litter/keeper").asText()), population + "/litters", world.at("/litter/body"));
        ObjectNode offer = world.at("/offer/body").deepCopy();
        offer.put("expiresOn", LocalDate.now(clock).plusDays(OFFERED_DAYS).toString());
        client.post(tokens.get(world.at("/offer/keeper").asText()), population + "/transfers", offer);
        client.post(
                tokens.get(world.at("/counts/keeper").asText()),
                population + "/count-releases",
                json.createObjectNode());
    }
}
