package org.demebook;

import io.quarkus.arc.Arc;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.demebook.keeper.Standing;
import org.demebook.start.TestServer;
import org.demebook.wall.Wall;

/** The database of the server under test as its owner sees it: for what no keeper can see or do. */
public final class Backstage {
    private Backstage() {}

    /** The first column of the answer, as text. */
    public static List<String> ask(String query, Object... parameters) {
        try (var connection = connect();
                var statement = connection.prepareStatement(query)) {
            for (int i = 0; i < parameters.length; i++) {
                statement.setObject(i + 1, parameters[i]);
            }
            var answer = new ArrayList<String>();
            try (var rows = statement.executeQuery()) {
                while (rows.next()) {
                    answer.add(rows.getString(1));
                }
            }
            return answer;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Changes rows behind the server's back; returns how many. */
    public static int change(String statement, Object... parameters) {
        try (var connection = connect();
                var change = connection.prepareStatement(statement)) {
            for (int i = 0; i < parameters.length; i++) {
                change.setObject(i + 1, parameters[i]);
            }
            return change.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whom the test itself speaks for where it calls a door without a request, as a request would say it. */
    public static Standing asks(Standing by) {
        Arc.container().instance(Wall.class).get().asks(by.keeperId());
        return by;
    }

    /** As the owner. */
    public static Connection connect() throws SQLException {
        var owner = TestServer.database().owner();
        return DriverManager.getConnection(TestServer.database().jdbcUrl(), owner.name(), owner.password());
    }
}
