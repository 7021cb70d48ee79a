package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Reference;
import org.demebook.start.TestServer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The invented pedigrees of {@code src/test/resources/reference}, sent through the import, against values from pedigreemm
 * 0.3-5, nadiv 2.18.0, pedigree 1.4.2 and kinship2 1.9.6.2 under R 4.2.2, printed with twelve digits.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ReferenceRegisterTest {
    private static final double RELATIVE = 1e-10;
    private static final double ROUNDING = 1e-13;

    @Inject
    Ancestries ancestries;

    @Inject
    DataSource database;

    private final Map<String, String> numberOf = new HashMap<>();

    @ParameterizedTest
    @ValueSource(strings = {"p1-tiny-loops", "p2-overlap", "p3-half-known", "p4-popular-sire", "p5-bottleneck-demes"})
    void an_imported_pedigree_has_the_figures_of_the_libraries(String name) throws InterruptedException {
        var colony = Colony.found();
        register(colony, name);

        var snapshot = ancestries.whole(standing(colony));
        for (var line : Reference.lines(name + ".F.csv")) {
            int row = snapshot.row(numberOf.get(line[0])).orElseThrow();
            agrees("F of " + line[0], snapshot.pedigree().inbreeding(row), line[1]);
        }
        var pool = snapshot.pool().orElseThrow();
        for (var line : Reference.lines(name + ".mk.csv")) {
            int row = snapshot.row(numberOf.get(line[0])).orElseThrow();
            agrees("mean kinship of " + line[0], pool.meanKinship(row), line[1]);
        }
        assertGenePool(colony, name);
    }

    private void assertGenePool(Colony colony, String name) {
        var answer = JsonPath.from(
                        colony.get(WREN, "/gene-pool").statusCode(200).extract().asString())
                .using(JsonPathConfig.jsonPathConfig().numberReturnType(NumberReturnType.DOUBLE));
        var summary = new HashMap<String, String>();
        Reference.lines(name + ".summary.csv").forEach(line -> summary.put(line[0], line[1]));
        assertThat(answer.getInt("living")).isEqualTo(Integer.parseInt(summary.get("living")));
        agrees("mean kinship", answer.getDouble("meanKinship"), summary.get("meanKinship"));
        agrees("gene diversity", answer.getDouble("geneDiversity"), summary.get("geneDiversity"));
        agrees("FGE", answer.getDouble("founderGenomeEquivalents"), summary.get("founderGenomeEquivalents"));
        agrees("fe", answer.getDouble("effectiveFounders"), summary.get("founderEquivalents"));
        agrees("unnamed", answer.getDouble("unnamedContribution"), summary.get("contributionOfUnknown"));
        var shares = answer.<Map<String, Object>>getList("founders").stream()
                .collect(Collectors.toMap(
                        f -> (String) f.get("animal"), f -> ((Number) f.get("contribution")).doubleValue()));
        var named = Reference.lines(name + ".founders.csv").stream()
                .filter(line -> !line[0].startsWith("?") && Double.parseDouble(line[1]) > 0)
                .toList();
        assertThat(shares).hasSize(named.size());
        named.forEach(line -> agrees(line[0], shares.get(numberOf.get(line[0])), line[1]));
    }

    private static void agrees(String what, double found, String printed) {
        double expected = Double.parseDouble(printed);
        assertThat(Math.abs(found - expected))
                .as("%s: %s, the libraries say %s", what, found, printed)
                .isLessThanOrEqualTo(RELATIVE * Math.abs(expected) + ROUNDING);
    }

    // ── registering ──────────────────────────────────────────────────────────────────────────────────────────────────

    /** Sends the pedigree as a keeper would, in the order of its file; the animals that do not live get a death. */
    private void register(Colony colony, String name) throws InterruptedException {
        var living = Reference.lines(name + ".living.csv").stream()
                .map(line -> line[0])
                .collect(Collectors.toSet());
        var sheet = new StringBuilder("reference,sire,dam,sex,born,died,origin\n");
        for (var line : Reference.lines(name + ".csv")) {
            var founder = line[1].isEmpty() && line[2].isEmpty();
            sheet.append(String.join(
                            ",",
                            line[0],
                            line[1],
                            line[2],
                            line[3],
                            line[4],
                            living.contains(line[0]) ? "" : "2020",
                            founder ? "wild-caught" : "captive-bred"))
                    .append('\n');
        }
        var run = as(WREN).contentType("text/csv")
                .body(sheet.toString().getBytes(StandardCharsets.UTF_8))
                .post(colony.path("/imports"))
                .then()
                .statusCode(202)
                .extract()
                .header("Location");
        String state;
        while ((state = as(WREN).get(run).path("state")).equals("running")) {
            Thread.sleep(100);
        }
        assertThat(state).isEqualTo("done");
        as(WREN).get(colony.path("/export?format=csv"))
                .asString()
                .lines()
                .skip(1)
                .map(line -> line.split(",", 3))
                .forEach(line -> numberOf.put(line[1], line[0]));
    }

    private Standing standing(Colony colony) {
        var populationId =
                id("select population_id from demebook.journal_head where code = '%s'".formatted(colony.code));
        var keeperId = id("select id from demebook.keeper where name = '%s'".formatted(WREN));
        return Backstage.asks(new Standing(populationId, colony.code, keeperId, Role.COORDINATOR, head(populationId)));
    }

    private long head(UUID populationId) {
        return ask(
                "select seq from demebook.journal_head where population_id = '%s'".formatted(populationId), Long.class);
    }

    private UUID id(String query) {
        return ask(query, UUID.class);
    }

    private <T> T ask(String query, Class<T> type) {
        try (var connection = database.getConnection();
                var statement = connection.createStatement();
                var row = statement.executeQuery(query)) {
            row.next();
            return row.getObject(1, type);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
