package org.demebook.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.notation.StudbookNumber;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ImportTest {
    @Inject
    Importing importing;

    /** As the server, who alone sees what it waits for. */
    @Inject
    DataSource database;

    Colony colony;
    Sheets wren;

    @BeforeEach
    void found() {
        colony = Colony.found();
        wren = new Sheets(colony, WREN);
    }

    @Test
    void an_import_registers_young_and_parents_in_whatever_order_they_stand_and_numbers_them_in_that_order() {
        wren.imports(
                        "id,dam,sire,sex,born,died,origin,source,chip,marks,notes",
                        "Ash,Fern,Moss,,2019-06-29,,cb,F,981000000000123; 981000000000124,notch; scar,\"calm, big\"",
                        "Fern,,,f,2015,../2024-05-01,wild-caught,W,,,",
                        "Moss,,,m,2015,,WC,W,,,")
                .body("state", equalTo("done"))
                .body("rowsTotal", equalTo(3))
                .body("rowsDone", equalTo(3))
                .body("animalsAdded", equalTo(3))
                .body("findings.rule", equalTo(List.of("year-only")))
                .body("endedAt", notNullValue());

        colony.get(WREN, "/animals/" + number(1))
                .statusCode(200)
                .body("dam", equalTo(number(2)))
                .body("sire.animal", equalTo(number(3)))
                .body("sex", equalTo("unknown"))
                .body("born", equalTo("2019-06-29"))
                .body("origin", equalTo("captive-bred"))
                .body("held.sourceCode", equalTo("F"))
                .body("held.notes", equalTo("calm, big"))
                .body(
                        "held.identifiers.findAll { it.kind == 'transponder' }.value",
                        equalTo(List.of("981000000000123", "981000000000124")))
                .body("held.identifiers.findAll { it.kind == 'mark' }.value", equalTo(List.of("notch", "scar")))
                .body("held.identifiers.findAll { it.kind == 'own-reference' }.value", equalTo(List.of("Ash")));
        colony.get(WREN, "/animals/" + number(2))
                .body("held.died", equalTo("../2024-05-01"))
                .body("alive", equalTo(false));
    }

    @Test
    void a_sheet_sent_again_adds_nothing() {
        String[] sheet = {
            "id,dam,sire,sex,born,marks",
            "Ash,Fern,one of Moss|Reed,,2019,notch",
            "Fern,,,f,2010,",
            "Moss,,,m,2010,",
            "Reed,,,m,2010,"
        };
        wren.imports(sheet).body("animalsAdded", equalTo(4));
        var before = wren.exportedText("");
        wren.imports(sheet)
                .body("state", equalTo("done"))
                .body("animalsAdded", equalTo(0))
                .body("alreadyKnown", equalTo(4));
        sheet[4] = "Reed,,,m,2010,\r\nBirch,Fern,Moss,,2020,";
        wren.imports(sheet).body("animalsAdded", equalTo(1)).body("alreadyKnown", equalTo(4));
        assertThat(wren.exportedText("")).startsWith(before);
    }

    @Test
    void one_error_refuses_the_whole_and_stores_nothing() {
        var before = wren.exportedText("");
        wren.imports("id,sex", "A,f", "B,x")
                .body("state", equalTo("refused"))
                .body("animalsAdded", equalTo(0))
                .body("errors", equalTo(1))
                .body("findings[0].row", equalTo(3));
        assertThat(wren.exportedText("")).isEqualTo(before);
        wren.imports("id", "A").body("state", equalTo("done"));
        assertThat(wren.exportedText("")).contains(number(1)).doesNotContain(number(2));
    }

    @Test
    void what_the_whole_import_leaves_is_kept_with_each_animal_and_its_reason() {
        String[] sheet = {"id,dam,born,sex", "A,B,2010-06-01,", "B,,2010-01-01,f"};
        wren.imports(sheet).body("state", equalTo("refused"));
        wren.importsLeaving("dam-too-young", "her births are in the book", sheet)
                .body("state", equalTo("done"))
                .body("animalsAdded", equalTo(2));
        for (var animal : new String[] {number(1), number(2)}) {
            colony.get(WREN, "/animals/" + animal + "/findings").body("findings", empty());
        }
        colony.get(WREN, "/animals/" + number(1) + "/findings")
                .body("left[0].rule", equalTo("dam-too-young"))
                .body("left[0].reason", equalTo("her births are in the book"));
    }

    @Test
    void warnings_refuse_nothing_and_are_kept() {
        wren.imports("id,colour", "A,red")
                .body("state", equalTo("done"))
                .body("warnings", equalTo(1))
                .body("findings[0].message", containsString("kept nowhere"));
    }

    @Test
    void numbers_that_animals_bring_are_kept_and_fresh_ones_come_behind_them() {
        var other = new StudbookNumber(colony.code, "K", 7).toString();
        wren.imports("number,id,dam,sex", number(40) + ",Ash,Fern,", ",Fern,,f", other + ",Guest,,", number(12) + ",,,")
                .body("state", equalTo("done"))
                .body("animalsAdded", equalTo(4));
        colony.get(WREN, "/animals/" + number(40)).body("dam", equalTo(number(41)));
        colony.get(WREN, "/animals/" + other).statusCode(200);
        assertThat(colony.female(WREN)).isEqualTo(number(42));
    }

    @Test
    void candidates_come_in_each_young_on_its_own_or_one_for_the_whole_litter() throws SQLException {
        wren.imports(
                        "id,dam,sire,sex,born",
                        "F,,,f,2010",
                        "M1,,,m,2010",
                        "M2,,,m,2010",
                        "own,F,M1|M2,,2018",
                        "k1,F,one of M1:0.6|M2:0.4,,2019-06-29",
                        "k2,F,one of M2:0.4|M1:0.6,,2019-06-29",
                        "later,F,one of M1:0.6|M2:0.4,,2021-06-29",
                        "alone,,one of M1|M2,,2021-06-29",
                        "p,F,none central 0.25,,2022")
                .body("state", equalTo("done"));
        colony.get(WREN, "/animals/" + number(4))
                .body("sire.kind", equalTo("candidates"))
                .body("sire.wholeLitter", equalTo(false))
                .body("sire.candidates.probability", equalTo(List.of(0.5f, 0.5f)));
        colony.get(WREN, "/animals/" + number(5))
                .body("sire.wholeLitter", equalTo(true))
                .body("sire.candidates.animal", equalTo(List.of(number(2), number(3))))
                .body("sire.candidates.probability", equalTo(List.of(0.6f, 0.4f)));
        colony.get(WREN, "/animals/" + number(9))
                .body("sire.kind", equalTo("none"))
                .body("sire.fusion", equalTo("central"))
                .body("sire.secondDivision", equalTo(0.25f));

        assertThat(draw(5)).isEqualTo(draw(6)).isNotEqualTo(draw(7));
        assertThat(draw(8)).isNotNull().isNotEqualTo(draw(7));
        wren.imports("id,dam,sire,born", "k3,F,one of M1:0.6|M2:0.4,2019-06-29").body("state", equalTo("done"));
        assertThat(draw(10)).isEqualTo(draw(5));
    }

    @Test
    void a_reference_with_a_bar_or_colon_is_named_with_backslashes() {
        wren.imports("id,sire,sex", "2019:1|x,,m", "none,,m", "A,2019\\:1\\|x,", "B,\\none,", "C,2019\\:1\\|x|\\none,")
                .body("state", equalTo("refused"))
                .body("errors", equalTo(1));
        wren.imports("id,sire,sex", "2019:1|x,,m", "none,,m", "A,2019\\:1\\|x,", "B,\\none,", "C,2019\\:1\\|x|none,")
                .body("state", equalTo("done"));
        colony.get(WREN, "/animals/" + number(3)).body("sire.animal", equalTo(number(1)));
        colony.get(WREN, "/animals/" + number(4)).body("sire.animal", equalTo(number(2)));
        colony.get(WREN, "/animals/" + number(5))
                .body("sire.candidates.animal", containsInAnyOrder(number(1), number(2)));
    }

    @Test
    void a_correction_made_in_the_register_meanwhile_is_not_undone() {
        wren.imports("id,sex,born", "A,,2015");
        colony.put(WREN, number(1), "/sex", Map.of("sex", "female")).statusCode(200);
        wren.imports("id,sex,born", "A,,2015").body("state", equalTo("done")).body("alreadyKnown", equalTo(1));
        colony.get(WREN, "/animals/" + number(1)).body("sex", equalTo("female"));
    }

    @Test
    void one_idempotency_key_starts_one_import() {
        var key = UUID.randomUUID().toString();
        var file = Sheets.bytes("id", "A");
        var first = wren.start(file, Sheets.CSV, key).statusCode(202).extract().header("Location");
        var again = wren.start(file, Sheets.CSV, key).statusCode(202).extract().header("Location");
        assertThat(again).isEqualTo(first);
        wren.end(first);
        wren.start(Sheets.bytes("id", "B"), Sheets.CSV, key)
                .statusCode(422)
                .body("type", equalTo("/problems/idempotency-key-reused"));
    }

    @Test
    void a_second_import_waits_for_the_end_of_the_first() throws SQLException {
        var run = leaveRunning(Instant.now().plusSeconds(3600));
        wren.start(Sheets.bytes("id", "A"), Sheets.CSV, UUID.randomUUID().toString())
                .statusCode(409)
                .body("type", equalTo("/problems/import-running"));
        new Sheets(colony, INES).imports("id", "A").body("state", equalTo("done"));
        colony.get(WREN, "/imports/" + run).body("state", equalTo("running"));
    }

    @Test
    void an_import_that_a_stopped_server_left_behind_is_told_as_interrupted_at_the_next_start() throws SQLException {
        var run = leaveRunning(Instant.parse("2000-01-01T00:00:00Z"));
        importing.tellInterrupted(Instant.parse("2000-01-02T00:00:00Z"));
        colony.get(WREN, "/imports/" + run)
                .body("state", equalTo("interrupted"))
                .body("animalsAdded", equalTo(0))
                .body("findings[0].message", containsString("send the file again"));
        wren.imports("id", "A").body("state", equalTo("done"));
    }

    @Test
    void only_who_started_an_import_sees_it() {
        var location = wren.start(
                        Sheets.bytes("id", "A"), Sheets.CSV, UUID.randomUUID().toString())
                .extract()
                .header("Location");
        as(INES).get(location).then().statusCode(404).body("type", equalTo("/problems/no-such-import"));
        wren.end(location);
    }

    @Test
    void a_change_made_between_the_check_of_a_sheet_and_its_turn_is_seen() throws SQLException {
        var dam = colony.female(WREN);
        String location;
        try (var connection = Backstage.connect()) {
            connection.setAutoCommit(false);
            lock(connection);
            location = wren.start(
                            Sheets.bytes("number,sex", dam + ",f"),
                            Sheets.CSV,
                            UUID.randomUUID().toString())
                    .extract()
                    .header("Location");
            // the import waits for the population; meanwhile the animal turns out to be a male
            change(connection, "update demebook.animal set sex = 'male' where number = '%s'".formatted(dam));
            change(
                    connection,
                    "update demebook.journal_head set seq = seq + 1 where code = '%s'".formatted(colony.code));
            awaitWaiting();
            connection.commit();
        }
        wren.end(location)
                .body("state", equalTo("refused"))
                .body("findings[0].message", containsString("the register has male"));
    }

    /** Until somebody waits for a lock of this population's head row. */
    private void awaitWaiting() throws SQLException {
        var deadline = Instant.now().plusSeconds(20);
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(
                        "select count(*) from pg_stat_activity where wait_event_type = 'Lock' and query like '%journal_head%'")) {
            long waiting = 0;
            while (waiting == 0) {
                assertThat(Instant.now()).isBefore(deadline);
                try (var row = query.executeQuery()) {
                    row.next();
                    waiting = row.getLong(1);
                }
            }
        }
    }

    private static void change(Connection connection, String sql) throws SQLException {
        try (var statement = connection.createStatement()) {
            assertThat(statement.executeUpdate(sql)).isEqualTo(1);
        }
    }

    private void lock(Connection connection) throws SQLException {
        try (var lock =
                connection.prepareStatement("select seq from demebook.journal_head where code = ? for no key update")) {
            lock.setString(1, colony.code);
            lock.executeQuery();
        }
    }

    private UUID leaveRunning(Instant startedAt) throws SQLException {
        var id = UUID.randomUUID();
        try (var connection = Backstage.connect();
                var insert = connection.prepareStatement("""
                        insert into demebook.import_run
                        select h.population_id, ?::uuid, k.id, 'running', 1, 0, 0, 0,
                            '{"rows":1,"wouldAdd":0,"alreadyKnown":0,"errors":0,"warnings":0,"findings":[]}', ?::timestamptz, null
                        from demebook.journal_head h, demebook.keeper k
                        where h.code = ? and k.name = 'wren'
                        """)) {
            insert.setString(1, id.toString());
            insert.setString(2, startedAt.toString());
            insert.setString(3, colony.code);
            assertThat(insert.executeUpdate()).isEqualTo(1);
        }
        return id;
    }

    private UUID draw(long serial) throws SQLException {
        try (var connection = Backstage.connect();
                var query = connection.prepareStatement("select sire_draw_id from demebook.animal where number = ?")) {
            query.setString(1, number(serial));
            try (var row = query.executeQuery()) {
                assertThat(row.next()).isTrue();
                return row.getObject(1, UUID.class);
            }
        }
    }

    private String number(long serial) {
        return new StudbookNumber(colony.code, "H", serial).toString();
    }
}
