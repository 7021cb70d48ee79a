package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThanOrEqualTo;
import static org.hamcrest.Matchers.notNullValue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;

/**
 * The main job by keepers whose accounts are in Keycloak, on the animals of the demo, one day after the other: each test
 * goes on where the one before it ended. Figures are those of the worked pedigree in demo-data, computed as fractions.
 */
@TestMethodOrder(OrderAnnotation.class)
class KeycloakMainJobIT {
    private static final Path DEMO = Path.of("demo-data");
    private static final String MC = "/api/v1/populations/MC";
    private static final ObjectMapper JSON = new ObjectMapper();

    static KeycloakWorld world;
    static JsonNode demo;

    @BeforeAll
    static void start() throws Exception {
        world = KeycloakWorld.start();
        demo = JSON.readTree(DEMO.resolve("world.json").toFile());
    }

    @Test
    @Order(1)
    void a_coordinator_founds_the_population_and_admits_keepers_who_never_came_here() {
        world.as("wren")
                .body(demo.get("population").toString())
                .post("/api/v1/populations")
                .then()
                .statusCode(201);
        for (var keeper : demo.get("keepers")) {
            var name = keeper.get("name").asText();
            world.account(name);
            if (keeper.get("role").asText().equals("member")) {
                world.admit("wren", "MC", name, "member").statusCode(200);
            }
            String collection = post(
                            name,
                            "/collections",
                            Map.of("label", keeper.get("collection").asText()))
                    .statusCode(201)
                    .extract()
                    .path("id");
            world.as(name)
                    .body(Map.of("choice", keeper.get("sharing").asText()))
                    .put(MC + "/collections/" + collection + "/sharing")
                    .then()
                    .statusCode(200);
        }

        world.awaitGroup("MC", "coordinator", Set.of("wren"));
        world.awaitGroup("MC", "member", Set.of("ines", "dov", "oyelaran"));
    }

    @Test
    @Order(2)
    void everybody_brings_their_animals_in() throws IOException {
        for (var sheet : demo.get("sheets")) {
            importSheet(
                    sheet.get("keeper").asText(), DEMO.resolve(sheet.get("file").asText()));
        }
        get("wren", "/animals?limit=100").statusCode(200).body("items", hasSize(16));
        post("oyelaran", "/animals", Map.of("sex", "female", "origin", "wild-caught", "born", "2021"))
                .statusCode(201)
                .body("animal.number", notNullValue());
    }

    @Test
    @Order(3)
    void a_litter_is_registered_and_one_of_its_young_is_offered_and_taken_over_by_browser() throws Exception {
        post("wren", "/litters", demo.at("/litter/body").toString()).statusCode(201);
        String animal = get("wren", "/animals?limit=100")
                .extract()
                .path("items.find { it.born == '2026-06-29' && it.alive }.number");
        String transfer = post("wren", "/transfers", Map.of("animal", animal, "kind", "sale", "to", "ines"))
                .statusCode(201)
                .extract()
                .path("transfer.id");

        var browser = new Browser();
        browser.signIn(world.server.address() + "/sign-in", "ines");
        var acceptance = world.byCookie(MC + "/transfers/" + transfer + "/acceptance")
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .header("Sec-Fetch-Site", "same-origin")
                .POST(BodyPublishers.ofString("{}"));
        assertThat(browser.send(acceptance).statusCode()).isEqualTo(200);
        get("ines", "/animals/" + animal).statusCode(200).body("held", notNullValue());

        // 014 × 013: every grandparent is another founder
        get("ines", "/animals/" + animal + "/ancestry?generations=5")
                .statusCode(200)
                .body("inbreedingCoefficient", equalTo(0.0f))
                .body("founders.contribution", contains(.25f, .25f, .25f, .25f));
    }

    @Test
    @Order(4)
    void pairings_across_collections_leave_out_close_relatives() {
        // a full brother and a son: the young's inbreeding is the parents' kinship, 1/4
        // she bore in June: half a year from now she has rested
        get(
                        "wren",
                        "/pairings?for=MC-H-13-W&pairOn="
                                + LocalDate.now(ZoneOffset.UTC).plusMonths(6))
                .statusCode(200)
                .body("pairings.inbreedingOfYoung", everyItem(lessThanOrEqualTo(.125f)))
                .body("excluded.findAll { it.number == 'MC-H-12-Y' }.inbreedingOfYoung", contains(.25f));
        get("ines", "/pairings?limit=5").statusCode(200).body("pairings", hasSize(5));
    }

    @Test
    @Order(5)
    void somebody_who_bought_an_animal_joins_with_its_claim_code() {
        String animal = get("wren", "/animals?limit=100&mine=true")
                .extract()
                .path("items.find { it.born == '2026-06-29' && it.alive }.number");
        String code = post("wren", "/transfers", Map.of("animal", animal, "kind", "sale", "withClaimCode", true))
                .statusCode(201)
                .extract()
                .path("claimCode");
        world.as("buyer")
                .body(Map.of("code", code))
                .post("/api/v1/claims")
                .then()
                .statusCode(200);

        get("buyer", "/animals/" + animal).statusCode(200).body("held", notNullValue());
        world.awaitGroup("MC", "member", Set.of("ines", "dov", "oyelaran", "buyer"));
    }

    @Test
    @Order(6)
    void counts_are_published_for_everybody() {
        post("wren", "/count-releases", Map.of()).statusCode(201);
        world.server
                .anonymous()
                .get(MC + "/count-releases")
                .then()
                .statusCode(200)
                .body("items.population", hasItem("MC"));
    }

    private static ValidatableResponse get(String keeper, String below) {
        return world.as(keeper).get(MC + below).then();
    }

    private static ValidatableResponse post(String keeper, String below, Object body) {
        return world.as(keeper).body(body).post(MC + below).then();
    }

    private static void importSheet(String keeper, Path sheet) throws IOException {
        String run = world.as(keeper)
                .contentType("text/csv")
                .body(Files.readAllBytes(sheet))
                .post(MC + "/imports")
                .then()
                .statusCode(202)
                .extract()
                .path("id");
        KeycloakWorld.await(
                () -> get(keeper, "/imports/" + run).extract().path("state").equals("done"),
                () -> sheet + ": " + get(keeper, "/imports/" + run).extract().asString());
    }
}
