package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import io.smallrye.jwt.build.Jwt;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.Colony;
import org.demebook.consent.Questions.Relation;
import org.demebook.start.TestServer;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

/**
 * Every operation of the contract, asked about something own, granted, hidden and absent, by a keeper, a coordinator, the
 * administrator of the node, nobody and an expired token. What comes of each is written down by hand, in
 * {@code consent/access.tsv}: an operation that is not in it fails the test, and so does a line without an operation.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ObjectAccessTest {
    private static final String ADMINISTRATOR = "administrator";
    private static final List<String> ASKERS = List.of(INES, WREN, ADMINISTRATOR);
    private static final String NOT_APPLICABLE = "-";

    @ConfigProperty(name = "quarkus.oidc.token.issuer")
    String issuer;

    private final List<String> wrong = new ArrayList<>();
    private int asked;

    /** @param byAsker for each asker, one word for each relation */
    private record Line(Map<String, Map<Relation, String>> byAsker, String nobody, String expired) {}

    @Test
    void the_table_names_every_operation_and_no_other() {
        assertThat(table().keySet())
                .containsExactlyInAnyOrderElementsOf(
                        Operation.all().stream().map(Operation::name).toList());
    }

    @Test
    void everybody_may_do_what_the_table_says_and_nothing_else() {
        var questions = new Questions();
        var table = table();
        for (var operation : Operation.all()) {
            var line = table.get(operation.name());
            var keepers = new EnumMap<Relation, Question>(Relation.class);
            for (var asker : ASKERS) {
                line.byAsker.get(asker).forEach((relation, expected) -> {
                    if (!expected.equals(NOT_APPLICABLE)) {
                        try {
                            // who may nothing is asked about what the keeper was, and needs nothing fresh
                            var again = asker.equals(ADMINISTRATOR) && operation.isAboutAThing() && !operation.open()
                                    ? keepers.get(relation)
                                    : null;
                            var question = again == null ? questions.about(operation, asker, relation) : again;
                            keepers.putIfAbsent(relation, question);
                            check(questions, operation, asker, relation, expected, question);
                        } catch (AssertionError e) {
                            wrong.add("%s, %s, %s cannot be asked: %s"
                                    .formatted(operation.name(), asker, relation, e.getMessage()));
                        }
                    }
                });
            }
            // a thing of the keeper's own, so that nothing but the token stands against it
            for (var token : List.of("nobody", "an expired token")) {
                if (!operation.open() && keepers.get(Relation.OWN) == null) {
                    continue; // told above
                }
                var question =
                        operation.open() ? questions.about(operation, INES, Relation.OWN) : keepers.get(Relation.OWN);
                var nobody = token.equals("nobody");
                var sender =
                        nobody ? unsigned() : unsigned().auth().preemptive().oauth2(expired());
                compare(operation, token, "own", nobody ? line.nobody : line.expired, () -> withAccount(
                                operation, question)
                        .send(sender));
            }
        }
        assertThat(wrong).as("%d cells were asked", asked).isEmpty();
        assertThat(asked).isGreaterThan(1_300);
    }

    private void check(
            Questions questions,
            Operation operation,
            String asker,
            Relation relation,
            String expected,
            Question question) {
        boolean changesNothing = !operation.reads() && !expected.equals("yes");
        var before = changesNothing ? asDovSeesIt(questions, question) : List.of();
        compare(operation, asker, relation.name().toLowerCase(), expected, () -> question.send(Colony.as(asker)));
        var after = changesNothing ? asDovSeesIt(questions, question) : List.of();
        if (!after.equals(before)) {
            wrong.add("%s, %s, %s: was refused and changed %s to %s"
                    .formatted(operation.name(), asker, relation, before, after));
        }
    }

    private void compare(
            Operation operation, String asker, String relation, String expected, Supplier<Response> asking) {
        asked++;
        var cell = "%s, %s, %s: %s in the table, ".formatted(operation.name(), asker, relation, expected);
        try {
            var answer = asking.get();
            int status = answer.statusCode();
            var right = expected.equals("yes")
                    ? status >= 200 && status < 300
                    : status == Integer.parseInt(expected.replace("yes:", ""));
            if (!right) {
                wrong.add(cell + "answered " + status + " " + (status < 400 ? "" : answer.asString()));
            }
        } catch (AssertionError e) {
            wrong.add(cell + e.getMessage()); // not as the contract says
        }
    }

    /** What is written of the whole population, and how its holder sees the thing itself. */
    private static List<String> asDovSeesIt(Questions questions, Question question) {
        var codes = questions.codes();
        // an animal gets its name between nodes when the server next looks at what is granted to them, whatever is
        // asked meanwhile
        var seen = new ArrayList<>(ask(
                "select h.code || ' ' || count(e.seq) from demebook.journal_head h left join demebook.journal_entry e"
                        + " on e.population_id = h.population_id and e.type <> 'animal-named-between-nodes'"
                        + " where h.code in (?, ?, ?, ?) group by h.code order by h.code",
                codes.get(0),
                codes.get(1),
                codes.get(2),
                codes.get(3)));
        var thing = question.address()
                .replace("/preview", "")
                .replaceFirst("^(/api/v1/populations/[^/]+/[^/]+/[^/?.]+).*", "$1");
        var answer = Colony.as(DOV).get(thing);
        seen.add(answer.statusCode() + answer.header("ETag") + answer.asString());
        return seen;
    }

    // ── without a token that counts ──────────────────────────────────────────────────────────────────────────────────

    private static RequestSpecification unsigned() {
        return Colony.anonymous().header("Idempotency-Key", UUID.randomUUID().toString());
    }

    /** Whoever claims an animal without being signed in opens an account with it. */
    private static Question withAccount(Operation operation, Question question) {
        if (!operation.id().equals("claimAnimal")) {
            return question;
        }
        var body = new HashMap<Object, Object>((Map<?, ?>) question.body());
        body.put("name", "guest" + UUID.randomUUID().toString().substring(0, 8));
        body.put("fullName", "Guest");
        body.put("password", "a long walk on the cay");
        return question.with(body);
    }

    /** Ines's, signed with the key of this node, good until a minute ago. */
    private String expired() {
        var claims =
                new String(Base64.getUrlDecoder().decode(Colony.token(INES).split("\\.")[1]), StandardCharsets.UTF_8);
        var subject = claims.replaceFirst(".*\"sub\":\"([^\"]+)\".*", "$1");
        var end = Instant.now().minusSeconds(60);
        return Jwt.issuer(issuer)
                .subject(subject)
                .preferredUserName(INES)
                .groups("keeper")
                .issuedAt(end.minusSeconds(600))
                .expiresAt(end)
                .sign();
    }

    // ── the table ────────────────────────────────────────────────────────────────────────────────────────────────────

    private static Map<String, Line> table() {
        var lines = new LinkedHashMap<String, Line>();
        for (var text : text().split("\n")) {
            if (text.startsWith("#")) {
                continue;
            }
            var cells = text.split("\t");
            assertThat(cells).as(text).hasSize(6);
            var byAsker = new LinkedHashMap<String, Map<Relation, String>>();
            for (int i = 0; i < ASKERS.size(); i++) {
                var words = cells[i + 1].split(" ");
                assertThat(words).as(text).hasSize(Relation.values().length);
                var byRelation = new LinkedHashMap<Relation, String>();
                for (var relation : Relation.values()) {
                    byRelation.put(relation, words[relation.ordinal()]);
                }
                byAsker.put(ASKERS.get(i), byRelation);
            }
            assertThat(lines.put(cells[0], new Line(byAsker, cells[4], cells[5])))
                    .as("%s stands there twice", cells[0])
                    .isNull();
        }
        return lines;
    }

    private static String text() {
        try (var file = ObjectAccessTest.class.getResourceAsStream("/consent/access.tsv")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
