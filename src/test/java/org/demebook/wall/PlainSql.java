package org.demebook.wall;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;

import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** Around the server: a connection of the application's role, and a population of which nobody shows anything, for each test. */
abstract class PlainSql {
    @Inject
    Seals seals;

    Connection plain;
    Colony colony;
    String wrens;
    String ines;
    String hers;

    @BeforeEach
    void settle() throws SQLException {
        var app = TestServer.database().app();
        plain = DriverManager.getConnection(TestServer.database().jdbcUrl(), app.name(), app.password());
        colony = Colony.foundPrivate();
        Colony.token(OUTSIDER); // opens the account, if nobody did
        wrens = colony.female(WREN);
        ines = colony.female(INES);
        hers = colony.female(INES);
    }

    @AfterEach
    void leave() throws SQLException {
        plain.close();
    }

    static UUID keeper(String name) {
        return UUID.fromString(Backstage.ask("select id::text from demebook.keeper where name = ?", name)
                .get(0));
    }

    void speakFor(String keeper) throws SQLException {
        say(seals.of(keeper(keeper)));
    }

    void say(String sealed) throws SQLException {
        Wall.say(plain, sealed);
    }

    /** Numbers of the population's animals that the connection sees. */
    List<String> animals() throws SQLException {
        return ask("select number from demebook.animal where population_id ="
                + " (select population_id from demebook.journal_head where code = '" + colony.code
                + "') order by number");
    }

    /** The first column of the answer, if there is one, as text. */
    List<String> ask(String query) throws SQLException {
        try (var statement = plain.createStatement()) {
            var answer = new ArrayList<String>();
            if (statement.execute(query)) {
                try (var rows = statement.getResultSet()) {
                    while (rows.next()) {
                        answer.add(rows.getString(1));
                    }
                }
            }
            return answer;
        }
    }
}
