package org.demebook.wall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;

import io.quarkus.arc.Arc;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** What makes the wall cheap to ask (migration V20) opens nothing. Plain SQL around the server, as in {@link WallTest}. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class WallShortcutsTest extends PlainSql {
    private static final String MARK = "a notch in the third ventral";

    @Inject
    EveryConnection everyConnection;

    @Test
    void what_a_keeper_acts_for_is_asked_of_the_database_and_never_of_the_name() throws SQLException {
        var sealed = seals.of(keeper(WREN));
        var inesRack = Backstage.ask(
                        "select k.collection_id::text from demebook.collection_keeper k"
                                + " join demebook.journal_head h on h.population_id = k.population_id"
                                + " where h.code = ? and k.keeper_id = ?",
                        colony.code,
                        keeper(INES))
                .get(0);
        // under a good seal, collections that are claimed beside the name
        for (var claimed : List.of(sealed + ":" + inesRack, sealed + ":{" + inesRack + "}", sealed + "::" + inesRack)) {
            say(claimed);
            assertThat(animals()).as(claimed).containsExactly(wrens);
        }
        // within the name, which the seal then does not fit
        var seal = sealed.split(":")[1];
        for (var forged : List.of(
                keeper(WREN) + "," + inesRack + ":" + seal, inesRack + ":" + seal, keeper(WREN) + ":" + inesRack)) {
            say(forged);
            assertThat(animals()).as(forged).isEmpty();
        }

        // who has left the population has nothing from then on, on a connection that was opened before
        say(seals.of(keeper(INES)));
        assertThat(animals()).containsExactlyInAnyOrder(ines, hers);
        Colony.as(WREN).delete(colony.path("/members/" + INES)).then().statusCode(204);
        assertThat(animals()).isEmpty();
    }

    @Test
    void what_a_policy_looks_through_shows_nothing_that_the_walls_do_not() throws SQLException {
        var views = Backstage.ask(
                "select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace"
                        + " where n.nspname = 'demebook' and c.relkind = 'v' and has_table_privilege(?, c.oid, 'select')"
                        + " and exists (select 1 from pg_attribute a where a.attrelid = c.oid and a.attname = 'population_id')"
                        + " order by 1",
                TestServer.database().app().name());
        assertThat(views).contains("own_animal", "marked_animal", "parented_animal", "asking_transfer", "opened");
        colony.share(INES, "open-pedigree");
        for (var view : views) {
            say("");
            assertThat(ask("select count(*)::text from demebook." + view))
                    .as(view)
                    .containsExactly("0");
        }
        for (var view : List.of("own_animal", "marked_animal", "parented_animal")) {
            for (var asker : List.of(WREN, INES, DOV, OUTSIDER)) {
                speakFor(asker);
                assertThat(ask("select v.id::text from demebook." + view
                                + " v except select id::text from demebook.animal"))
                        .as(view + " for " + asker)
                        .isEmpty();
            }
        }
        speakFor(DOV);
        var here = " where population_id = (select population_id from demebook.journal_head where code = '"
                + colony.code + "')";
        assertThat(ask("select count(*)::text from demebook.own_animal" + here)).containsExactly("0");
        assertThat(ask("select count(*)::text from demebook.parented_animal" + here))
                .containsExactly("2");
    }

    @Test
    void marks_that_are_opened_alone_do_not_show_an_animal_that_is_not() throws SQLException {
        colony.post(INES, "/animals/" + ines + "/identifiers", Map.of("kind", "mark", "value", MARK))
                .statusCode(200);
        var marks = "select i.value from demebook.identifier i join demebook.journal_head h"
                + " on h.population_id = i.population_id where i.kind = 'mark' and h.code = '" + colony.code + "'";
        grant(INES, ines, WREN, "marks-and-photos");
        speakFor(WREN);
        assertThat(ask(marks)).isEmpty();
        grant(INES, hers, WREN, "identity");
        speakFor(WREN);
        assertThat(ask(marks)).as("the other one's identity").isEmpty();
        grant(INES, ines, WREN, "identity");
        speakFor(WREN);
        assertThat(ask(marks)).containsExactly(MARK);
        speakFor(DOV);
        assertThat(ask(marks)).isEmpty();
    }

    @Test
    void a_connection_is_told_once_and_again_when_a_rollback_took_the_name_back() throws SQLException {
        Arc.container().instance(Speaker.class).get().is(keeper(INES));
        everyConnection.onConnectionAcquire(plain);
        assertThat(animals()).containsExactlyInAnyOrder(ines, hers);
        // not told what it was told before: a setting that somebody took away behind the pool's back stays away
        say("");
        everyConnection.onConnectionAcquire(plain);
        assertThat(animals()).isEmpty();

        Arc.container().instance(Speaker.class).get().is(keeper(WREN));
        plain.setAutoCommit(false);
        everyConnection.onConnectionAcquire(plain);
        assertThat(animals()).containsExactly(wrens);
        plain.rollback();
        plain.setAutoCommit(true);
        everyConnection.onConnectionAcquire(plain);
        assertThat(animals()).containsExactly(wrens);
        Arc.container().instance(Speaker.class).get().is(keeper(DOV));
        everyConnection.onConnectionAcquire(plain);
        assertThat(animals()).isEmpty();
    }

    private void grant(String by, String animal, String to, String fieldGroup) {
        colony.post(
                        by,
                        "/grants",
                        Map.of(
                                "recipient",
                                Map.of("kind", "keeper", "name", to),
                                "animals",
                                List.of(animal),
                                "fieldGroups",
                                List.of(fieldGroup),
                                "purposes",
                                List.of("pedigree-view"),
                                "actions",
                                List.of("read")))
                .statusCode(201);
    }
}
