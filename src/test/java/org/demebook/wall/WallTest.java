package org.demebook.wall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.demebook.Backstage;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** Goes around the server: plain SQL under the role with which it asks the database. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class WallTest extends PlainSql {
    /** Tables without a wall, and why: a new table stands here or has one. */
    private static final Map<String, String> OPEN = new TreeMap<>(Map.ofEntries(
            Map.entry("account", "hashes of passwords: read before anybody is known"),
            Map.entry("keeper", "names: who signs in is found by them"),
            Map.entry("invitation", "hashes of secrets: read before anybody is known"),
            Map.entry("calendar_address", "hashes of secrets: read before anybody is known"),
            Map.entry("claim_code", "hashes of secrets: read by somebody who belongs to no population yet"),
            Map.entry("kept_answer", "found by the sender's key before the work begins"),
            Map.entry("membership", "what everybody is in a population: every request begins with it"),
            Map.entry("collection", "labels, shown to whom they belong"),
            Map.entry("collection_keeper", "who acts for which collection"),
            Map.entry("population", "what a population is, no animal"),
            Map.entry("journal_head", "how far the journal is"),
            Map.entry("serial_counter", "how far the numbers are"),
            Map.entry("count_release", "published"),
            Map.entry("region_list", "the regions that an association counts by"),
            Map.entry("region_distance", "how far apart those regions are"),
            Map.entry("count_rules", "two numbers, for coordinators"),
            Map.entry("flyway_schema_history", "the migrations"),
            Map.entry("federated_population", "which populations are shared, and by whose charter"),
            Map.entry("federated_aside", "nodes that are set aside"),
            Map.entry("federated_store", "how often the federated journals changed"),
            Map.entry("federated_journal", "how far the federated journals are"),
            Map.entry("federated_unchecked", "signed sizes and roots of journals, no entry"),
            Map.entry("peer", "other nodes, for administrators; looked up before it is known who asks"),
            Map.entry("wall_key", "the role has no right to it at all")));

    @Test
    void every_table_has_a_wall_or_a_reason_to_have_none() throws SQLException {
        var without = Backstage.ask("select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace"
                + " where n.nspname = 'demebook' and c.relkind = 'r' and not c.relrowsecurity");
        assertThat(without).containsExactlyInAnyOrderElementsOf(OPEN.keySet());
    }

    @Test
    void the_role_can_neither_step_over_the_wall_nor_take_it_down() {
        assertThat(Backstage.ask(
                        "select rolname from pg_roles where rolname = ? and (rolbypassrls or rolsuper)", appRole()))
                .isEmpty();
        assertThat(Backstage.ask(
                        "select tablename from pg_tables where schemaname = 'demebook' and tableowner = ?", appRole()))
                .isEmpty();
        assertThatThrownBy(() -> ask("select key from demebook.wall_key")).hasMessageContaining("permission denied");
        assertThatThrownBy(() -> ask("alter table demebook.animal disable row level security"))
                .hasMessageContaining("must be owner");
        assertThatThrownBy(() -> ask("set role demebook_owner")).hasMessageContaining("permission denied");
    }

    @Test
    void without_a_name_no_walled_table_has_a_row() throws SQLException {
        var walled = Backstage.ask("select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace"
                + " where n.nspname = 'demebook' and c.relkind = 'r' and c.relrowsecurity order by 1");
        assertThat(walled).hasSizeGreaterThan(25);
        for (var table : walled) {
            assertThat(ask("select count(*)::text from demebook." + table))
                    .as(table)
                    .containsExactly("0");
        }
        // they are not simply empty
        assertThat(Backstage.ask("select count(*)::text from demebook.animal").get(0))
                .isNotEqualTo("0");
    }

    @Test
    void a_keeper_s_connection_has_their_own_animals_and_those_that_were_opened_to_them() throws SQLException {
        speakFor(WREN);
        assertThat(animals()).containsExactly(wrens);
        speakFor(DOV);
        assertThat(animals()).isEmpty();
        speakFor(OUTSIDER);
        assertThat(animals()).isEmpty();

        String grant = colony.post(
                        INES,
                        "/grants",
                        Map.of(
                                "recipient",
                                Map.of("kind", "keeper", "name", WREN),
                                "animals",
                                List.of(ines),
                                "fieldGroups",
                                List.of("identity"),
                                "purposes",
                                List.of("pedigree-view"),
                                "actions",
                                List.of("read")))
                .statusCode(201)
                .extract()
                .path("id");
        speakFor(WREN);
        assertThat(animals()).containsExactlyInAnyOrder(wrens, ines);
        assertThat(ask(
                        "select kind from demebook.identifier i join demebook.animal a on a.id = i.animal_id where a.number = '"
                                + ines + "'"))
                .isEmpty();
        speakFor(DOV);
        assertThat(animals()).isEmpty();

        colony.post(INES, "/grants/" + grant + "/withdrawal", "{}").statusCode(200);
        speakFor(WREN);
        assertThat(animals()).containsExactly(wrens);
        speakFor(INES);
        assertThat(animals()).containsExactlyInAnyOrder(ines, hers);
    }

    @Test
    void what_a_grant_lets_be_computed_is_not_there_to_read() throws SQLException {
        colony.share(INES, "compute-only");
        speakFor(WREN);
        assertThat(animals()).containsExactly(wrens);
    }

    @Test
    void a_keeper_s_connection_changes_nothing() throws SQLException {
        speakFor(WREN);
        assertThat(update("update demebook.animal set notes = 'mine'")).isZero();
        assertThat(update("delete from demebook.animal")).isZero();
        assertThatThrownBy(() -> update("insert into demebook.journal_entry select population_id, 'X', 1, now(),"
                        + " population_id, 'x', '' from demebook.journal_head limit 1"))
                .hasMessageContaining("row-level security");
    }

    @Test
    void nobody_but_the_register_reads_the_journal_or_what_the_counts_rest_on() throws SQLException {
        for (var keeper : List.of(WREN, INES)) {
            speakFor(keeper);
            for (var table : List.of(
                    "journal_entry",
                    "count_basis",
                    "left_finding",
                    "unnamed_partners",
                    "approach",
                    "season_plan",
                    "season_input",
                    "season_answer",
                    "federated_entry",
                    "federated_animal",
                    "federation_alarm",
                    "telling",
                    "custodian",
                    "journal_words")) {
                assertThat(ask("select count(*)::text from demebook." + table)).containsExactly("0");
            }
        }
    }

    @Test
    void a_name_without_its_seal_is_nobody_s() throws SQLException {
        var seal = seals.of(keeper(WREN)).split(":")[1];
        for (var forged : List.of(
                "register:" + seal,
                keeper(INES) + ":" + seal,
                keeper(WREN) + ":",
                keeper(WREN).toString(),
                "register",
                ":",
                "register:" + "0".repeat(64))) {
            say(forged);
            assertThat(animals()).as(forged).isEmpty();
        }
        ask("set role demebook_register");
        assertThat(animals()).as("the register's role without its seal").isEmpty();
        say(seals.of(keeper(WREN)));
        assertThat(animals()).as("the register's role with a keeper's seal").isEmpty();
        say(seals.register());
        assertThat(animals()).contains(wrens, ines, hers);
        ask("reset role");
        assertThat(animals()).as("the register's seal without its role").isEmpty();
    }

    @Test
    void the_server_gives_every_connection_the_name_of_its_asker_and_of_nobody_after_them() {
        colony.get(WREN, "/animals").statusCode(200);
        colony.get(DOV, "/animals").statusCode(200);
        // the pool's connections as they stand now: none speaks for the register beyond its transaction
        assertThat(Backstage.ask(
                        "select count(*)::text from pg_stat_activity where usename = ? and state = 'idle in transaction'",
                        appRole()))
                .containsExactly("0");
        for (int i = 0; i < 50; i++) {
            assertThat(colony.get(WREN, "/animals").extract().<List<String>>path("items.number"))
                    .containsExactly(wrens);
            assertThat(colony.get(INES, "/animals").extract().<List<String>>path("items.number"))
                    .containsExactlyInAnyOrder(ines, hers);
        }
    }

    private static String appRole() {
        return TestServer.database().app().name();
    }

    private int update(String change) throws SQLException {
        try (var statement = plain.createStatement()) {
            return statement.executeUpdate(change);
        }
    }
}
