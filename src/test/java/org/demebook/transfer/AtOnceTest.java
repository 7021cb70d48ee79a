package org.demebook.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.RepeatedTest;

/** Two requests at the same moment. Each story is told several times, since the moment is never quite the same. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class AtOnceTest {
    private static final int TIMES = 8;

    static Colony colony;
    static Handover handover;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        handover = new Handover(colony);
        Colony.token(OUTSIDER);
    }

    @RepeatedTest(TIMES)
    void a_transfer_accepted_twice_at_once_is_accepted_once_and_both_are_told_so() {
        var number = colony.female(WREN);
        var id = handover.offered(WREN, number, INES);
        Callable<Response> accept = () -> as(INES).body(Map.of()).post(colony.path("/transfers/" + id + "/acceptance"));

        var answers = atOnce(accept, accept);

        assertThat(answers).extracting(Response::statusCode).containsExactly(200, 200);
        assertThat(answers.get(0).asString()).isEqualTo(answers.get(1).asString());
        assertThat(entries("transfer-accepted", id)).isEqualTo(1);
    }

    @RepeatedTest(TIMES)
    void accepted_and_withdrawn_at_once_is_one_of_the_two() {
        var number = colony.female(WREN);
        var id = handover.offered(WREN, number, INES);

        var answers = atOnce(
                () -> as(INES).body(Map.of()).post(colony.path("/transfers/" + id + "/acceptance")),
                () -> as(WREN).body(Map.of()).post(colony.path("/transfers/" + id + "/withdrawal")));

        assertThat(answers).extracting(Response::statusCode).containsExactlyInAnyOrder(200, 409);
        var accepted = answers.get(0).statusCode() == 200;
        assertThat((Object) handover.get(WREN, id).extract().path("state"))
                .isEqualTo(accepted ? "accepted" : "withdrawn");
        assertThat((Object) colony.get(accepted ? INES : WREN, "/animals/" + number)
                        .extract()
                        .path("held.collection"))
                .isNotNull();
    }

    @RepeatedTest(TIMES)
    void one_animal_offered_to_two_keepers_at_once_is_offered_to_one() {
        var number = colony.female(WREN);

        var answers = atOnce(
                () -> as(WREN).body(sale(number, INES)).post(colony.path("/transfers")),
                () -> as(WREN).body(sale(number, DOV)).post(colony.path("/transfers")));

        assertThat(answers).extracting(Response::statusCode).containsExactlyInAnyOrder(201, 409);
        var refused = answers.get(0).statusCode() == 409 ? answers.get(0) : answers.get(1);
        assertThat((String) refused.path("type")).isEqualTo("/problems/already-in-transfer");
    }

    @RepeatedTest(TIMES)
    void a_claim_code_used_twice_at_once_is_used_once() {
        var number = colony.female(WREN);
        var handedOut = handover.handOut(WREN, number).statusCode(201).extract();
        Map<String, String> claim = Map.of("code", handedOut.path("claimCode"));

        var answers = atOnce(() -> claim(INES, claim), () -> claim(DOV, claim));

        assertThat(answers).extracting(Response::statusCode).containsExactlyInAnyOrder(200, 404);
        assertThat(entries("transfer-claimed", handedOut.path("transfer.id"))).isEqualTo(1);
        var winner = answers.get(0).statusCode() == 200 ? INES : DOV;
        assertThat((Object) colony.get(winner, "/animals/" + number).extract().path("held.collection"))
                .isEqualTo(handover.collection(winner));
    }

    @RepeatedTest(TIMES)
    void one_idempotency_key_at_once_has_one_effect_and_the_same_bytes() {
        var key = UUID.randomUUID().toString();
        var number = colony.female(WREN);
        Callable<Response> offer = () -> as(WREN, key).body(sale(number, INES)).post(colony.path("/transfers"));

        var answers = atOnce(offer, offer);

        assertThat(answers).extracting(Response::statusCode).containsExactly(201, 201);
        assertThat(answers.get(0).asByteArray()).isEqualTo(answers.get(1).asByteArray());
        assertThat(answers.get(0).header("Location")).isEqualTo(answers.get(1).header("Location"));
        assertThat(entries("transfer-offered", answers.get(0).path("transfer.id")))
                .isEqualTo(1);
    }

    @RepeatedTest(TIMES)
    void one_idempotency_key_for_two_things_at_once_is_refused_for_the_second() {
        var key = UUID.randomUUID().toString();

        var answers = atOnce(
                () -> as(WREN, key).body(animal("female", "2021")).post(colony.path("/animals")),
                () -> as(WREN, key).body(animal("male", "2021")).post(colony.path("/animals")));

        assertThat(answers).extracting(Response::statusCode).containsExactlyInAnyOrder(201, 422);
        var refused = answers.get(0).statusCode() == 422 ? answers.get(0) : answers.get(1);
        assertThat((String) refused.path("type")).isEqualTo("/problems/idempotency-key-reused");
    }

    private static Response claim(String keeper, Map<String, String> claim) {
        return Handover.from(Handover.freshAddress(), as(keeper)).body(claim).post("/api/v1/claims");
    }

    private static Map<String, String> sale(String number, String to) {
        return Map.of("animal", number, "kind", "sale", "to", to);
    }

    private static int entries(String type, String transferId) {
        return Integer.parseInt(ask(
                        "select count(*) from demebook.journal_entry where type = ? and convert_from(body, 'UTF8') like ?",
                        type,
                        "%" + transferId + "%")
                .get(0));
    }

    private static List<Response> atOnce(Callable<Response> one, Callable<Response> other) {
        var barrier = new CyclicBarrier(2);
        var threads = Executors.newFixedThreadPool(2);
        try {
            var first = threads.submit(() -> {
                barrier.await();
                return one.call();
            });
            var second = threads.submit(() -> {
                barrier.await();
                return other.call();
            });
            return List.of(first.get(), second.get());
        } catch (InterruptedException | ExecutionException e) {
            throw new AssertionError(e);
        } finally {
            threads.shutdown();
        }
    }
}
