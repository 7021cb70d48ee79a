package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.WREN;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import jakarta.inject.Inject;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.demebook.Colony;
import org.demebook.journal.Journal;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.registry.AnimalRegistered;
import org.demebook.registry.Animals;
import org.demebook.registry.Origin;
import org.demebook.registry.RoughDate;
import org.demebook.registry.Sex;
import org.demebook.registry.Sire;
import org.demebook.registry.StudbookNumber;
import org.demebook.start.TestServer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The invented pedigrees of {@code src/test/resources/reference}, registered as animals, against values from pedigreemm
 * 0.3-5, nadiv 2.18.0, pedigree 1.4.2 and kinship2 1.9.6.2 under R 4.2.2, printed with twelve digits.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ReferenceRegisterTest {
    private static final double RELATIVE = 1e-10;
    private static final double ROUNDING = 1e-13;

    @Inject
    Animals animals;

    @Inject
    Ancestries ancestries;

    @Inject
    DataSource database;

    private final Map<String, String> numberOf = new HashMap<>();

    @ParameterizedTest
    @ValueSource(strings = {"p1-tiny-loops", "p2-overlap", "p3-half-known", "p4-popular-sire", "p5-bottleneck-demes"})
    void a_registered_pedigree_has_the_figures_of_the_libraries(String name) {
        var colony = Colony.found();
        var by = standing(colony);
        register(by, name);

        var snapshot = ancestries.snapshot(standing(colony));
        for (var line : lines(name + ".F.csv")) {
            int row = snapshot.row(numberOf.get(line[0])).orElseThrow();
            agrees("F of " + line[0], snapshot.pedigree().inbreeding(row), line[1]);
        }
        var pool = snapshot.pool().orElseThrow();
        for (var line : lines(name + ".mk.csv")) {
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
        lines(name + ".summary.csv").forEach(line -> summary.put(line[0], line[1]));
        assertThat(answer.getInt("living")).isEqualTo(Integer.parseInt(summary.get("living")));
        agrees("mean kinship", answer.getDouble("meanKinship"), summary.get("meanKinship"));
        agrees("gene diversity", answer.getDouble("geneDiversity"), summary.get("geneDiversity"));
        agrees("FGE", answer.getDouble("founderGenomeEquivalents"), summary.get("founderGenomeEquivalents"));
        agrees("fe", answer.getDouble("effectiveFounders"), summary.get("founderEquivalents"));
        agrees("unnamed", answer.getDouble("unnamedContribution"), summary.get("contributionOfUnknown"));
        var shares = answer.<Map<String, Object>>getList("founders").stream()
                .collect(Collectors.toMap(
                        f -> (String) f.get("animal"), f -> ((Number) f.get("contribution")).doubleValue()));
        var named = lines(name + ".founders.csv").stream()
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

    private void register(Standing by, String name) {
        var collectionId = id("select id from demebook.collection where population_id = '%s' order by id limit 1"
                .formatted(by.populationId()));
        var living = lines(name + ".living.csv").stream().map(line -> line[0]).collect(Collectors.toSet());
        var byId = new HashMap<String, String[]>();
        lines(name + ".csv").forEach(line -> byId.put(line[0], line));
        var ids = new HashMap<String, UUID>();
        var facts = new ArrayList<AnimalRegistered>();
        for (var line : parentsFirst(byId)) {
            var number = new StudbookNumber(by.populationCode(), "H", facts.size() + 1);
            numberOf.put(line[0], number.toString());
            ids.put(line[0], Journal.newId());
            facts.add(new AnimalRegistered(
                    ids.get(line[0]),
                    number,
                    line[3].equals("F") ? Sex.FEMALE : Sex.MALE,
                    RoughDate.ofYear(Integer.parseInt(line[4])),
                    living.contains(line[0]) ? null : RoughDate.ofYear(2100),
                    line[1].isEmpty() && line[2].isEmpty() ? Origin.WILD_CAUGHT : Origin.CAPTIVE_BRED,
                    null,
                    ids.get(line[2]),
                    line[1].isEmpty() ? new Sire.Unknown() : new Sire.Known(ids.get(line[1])),
                    null,
                    false,
                    collectionId,
                    List.of(),
                    null));
        }
        QuarkusTransaction.requiringNew().timeout(300).run(() -> animals.recordAll(by, facts, done -> {}));
    }

    private static List<String[]> parentsFirst(Map<String, String[]> byId) {
        var ordered = new ArrayList<String[]>();
        Set<String> done = new HashSet<>();
        byId.keySet().stream().sorted().forEach(id -> visit(id, byId, done, ordered));
        return ordered;
    }

    private static void visit(String id, Map<String, String[]> byId, Set<String> done, List<String[]> ordered) {
        if (id.isEmpty() || !done.add(id)) {
            return;
        }
        var line = byId.get(id);
        visit(line[1], byId, done, ordered);
        visit(line[2], byId, done, ordered);
        ordered.add(line);
    }

    private Standing standing(Colony colony) {
        var populationId =
                id("select population_id from demebook.journal_head where code = '%s'".formatted(colony.code));
        var keeperId = id("select id from demebook.keeper where name = '%s'".formatted(WREN));
        return new Standing(populationId, colony.code, keeperId, Role.COORDINATOR, head(populationId));
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

    /** The lines of a file without its head, cut at commas. */
    private static List<String[]> lines(String file) {
        var in = ReferenceRegisterTest.class.getResourceAsStream("/reference/" + file);
        try (var reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .skip(1)
                    .map(line -> line.replace("\"", "").split(",", -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
