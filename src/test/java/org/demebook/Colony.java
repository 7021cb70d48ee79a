package org.demebook;

import static io.restassured.RestAssured.given;

import io.quarkus.test.common.http.TestHTTPResourceManager;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.demebook.start.TestServer;

/**
 * A population of its own for a test, with keepers who are signed in: wren coordinates it, ines and dov are members, each
 * with a collection; oyelaran is on the node but does not belong to it.
 */
public final class Colony {
    public static final String WREN = "wren";
    public static final String INES = "ines";
    public static final String DOV = "dov";
    public static final String OUTSIDER = "oyelaran";

    public static final String PASSWORD = "a long walk on the cay";
    private static final ContractFilter CONTRACT = new ContractFilter();
    private static final AtomicInteger ADDRESSES = new AtomicInteger();
    private static final AtomicInteger FOUNDED = new AtomicInteger();
    private static final Map<String, String> TOKENS = new ConcurrentHashMap<>();

    public final String code;

    private Colony(String code) {
        this.code = code;
    }

    /** Each of the three shares an open pedigree with the others. */
    public static Colony found() {
        var colony = foundPrivate();
        for (var keeper : new String[] {WREN, INES, DOV}) {
            colony.share(keeper, "open-pedigree");
        }
        return colony;
    }

    /** Nobody shares anything. */
    public static Colony foundPrivate() {
        var colony = new Colony(
                "T" + Integer.toString(36 * 36 + FOUNDED.incrementAndGet(), 36).toUpperCase());
        var population = new HashMap<String, Object>();
        population.put("code", colony.code);
        population.put("name", "Marrowfin Cay");
        population.put("taxon", "insular dwarf Boa");
        population.put("locality", "Marrowfin Cay");
        population.put("birthMode", "live-bearing");
        as(WREN).body(population).post("/api/v1/populations").then().statusCode(201);
        for (var member : new String[] {INES, DOV}) {
            token(member);
            colony.post(WREN, "/members", Map.of("name", member, "role", "member"))
                    .statusCode(200);
        }
        for (var keeper : new String[] {WREN, INES, DOV}) {
            colony.post(keeper, "/collections", Map.of("label", keeper + "'s rack"))
                    .statusCode(201);
        }
        return colony;
    }

    /** A ready choice for the first collection of a keeper. */
    public void share(String keeper, String choice) {
        var collection = get(keeper, "/collections").extract().<String>path("[0].id");
        as(keeper)
                .body(Map.of("choice", choice))
                .put(path("/collections/" + collection + "/sharing"))
                .then()
                .statusCode(200);
    }

    /** A request of a keeper of this node, with a fresh Idempotency-Key. */
    public static RequestSpecification as(String keeper) {
        return as(keeper, UUID.randomUUID().toString());
    }

    /** The same with an Idempotency-Key of the test's choice. */
    public static RequestSpecification as(String keeper, String idempotencyKey) {
        return anonymous().auth().preemptive().oauth2(token(keeper)).header("Idempotency-Key", idempotencyKey);
    }

    /** A request of somebody who is not signed in, from an address that nobody used before. */
    public static RequestSpecification anonymous() {
        int n = ADDRESSES.incrementAndGet();
        return anonymous("10.%d.%d.%d".formatted(n >> 16 & 255, n >> 8 & 255, n & 255));
    }

    /** The same from a given address. */
    public static RequestSpecification anonymous(String address) {
        return given().header("X-Forwarded-For", address)
                .filter(CONTRACT)
                .baseUri(TestHTTPResourceManager.getUri())
                .contentType(ContentType.JSON);
    }

    public static String token(String keeper) {
        return TOKENS.computeIfAbsent(keeper, Colony::open);
    }

    private static String open(String keeper) {
        if (keeper.equals("administrator")) {
            return signIn(keeper, TestServer.ADMINISTRATOR_PASSWORD);
        }
        var secret = as("administrator")
                .body(Map.of())
                .post("/api/v1/invitations")
                .then()
                .statusCode(200)
                .extract()
                .<String>path("secret");
        return anonymous()
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .body(Map.of("secret", secret, "name", keeper, "fullName", "Keeper " + keeper, "password", PASSWORD))
                .post("/api/v1/invitations/acceptances")
                .then()
                .statusCode(200)
                .extract()
                .path("access_token");
    }

    public static String signIn(String name, String password) {
        return anonymous()
                .body(Map.of("name", name, "password", password))
                .post("/api/v1/tokens")
                .then()
                .statusCode(200)
                .extract()
                .path("access_token");
    }

    public String path(String below) {
        return "/api/v1/populations/" + code + below;
    }

    public ValidatableResponse get(String keeper, String below) {
        return as(keeper).get(path(below)).then();
    }

    public ValidatableResponse post(String keeper, String below, Object body) {
        return as(keeper).body(body).post(path(below)).then();
    }

    /** A change made on the revision that the animal has now. */
    public ValidatableResponse put(String keeper, String number, String below, Object body) {
        return as(keeper)
                .header("If-Match", etag(keeper, number))
                .body(body)
                .put(path("/animals/" + number + below))
                .then();
    }

    public String etag(String keeper, String number) {
        return as(keeper)
                .get(path("/animals/" + number))
                .then()
                .statusCode(200)
                .extract()
                .header("ETag");
    }

    // ── animals ──────────────────────────────────────────────────────────────────────────────────────────────────────

    public String female(String keeper) {
        return register(keeper, animal("female", "2020-06-01"));
    }

    public String male(String keeper) {
        return register(keeper, animal("male", "2020-06-01"));
    }

    /** A bred animal with both parents known. */
    public String young(String keeper, String sex, String born, String dam, String sire) {
        var animal = animal(sex, born);
        animal.put("dam", dam);
        animal.put("sire", Map.of("kind", "known", "animal", sire));
        return register(keeper, animal);
    }

    public static Map<String, Object> animal(String sex, String born) {
        var animal = new HashMap<String, Object>();
        animal.put("sex", sex);
        if (born != null) {
            animal.put("born", born);
        }
        animal.put("origin", "unknown");
        return animal;
    }

    public String register(String keeper, Map<String, Object> animal) {
        Response response = as(keeper).body(animal).post(path("/animals"));
        return response.then().statusCode(201).extract().path("animal.number");
    }
}
