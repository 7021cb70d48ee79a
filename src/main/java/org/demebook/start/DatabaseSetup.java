package org.demebook.start;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Properties;
import org.demebook.start.LocalPostgres.Login;
import org.postgresql.Driver;
import org.postgresql.PGConnection;

/**
 * Roles, database and schema. Every step looks first whether it is done, so that a start that was cut off is completed by
 * the next one.
 */
final class DatabaseSetup {

    static final String SUPERUSER = "postgres";
    static final String OWNER = "demebook_owner";
    static final String APP = "demebook_app";
    static final String REGISTER = "demebook_register";
    static final String DATABASE = "demebook";

    private static final String SUPERUSERS_DATABASE = "postgres";
    private static final String WRONG_PASSWORD = "28P01"; // PostgreSQL, appendix A: invalid_password

    private final int port;
    private final Secrets secrets;

    DatabaseSetup(int port, Secrets secrets) {
        this.port = port;
        this.secrets = secrets;
    }

    static String jdbcUrl(int port, String database) {
        return "jdbc:postgresql://127.0.0.1:%d/%s".formatted(port, database);
    }

    void run() throws SQLException {
        try (var connection = connect(SUPERUSERS_DATABASE)) {
            createRole(connection, secrets.owner());
            createRole(connection, secrets.app());
            createRegisterRole(connection);
            if (!exists(connection, "SELECT 1 FROM pg_database WHERE datname = '" + DATABASE + "'")) {
                execute(connection, "CREATE DATABASE demebook OWNER demebook_owner");
            }
        }
        try (var connection = connect(DATABASE)) {
            if (!exists(connection, "SELECT 1 FROM pg_namespace WHERE nspname = 'demebook'")) {
                createSchema(connection);
            }
        }
    }

    private Connection connect(String database) throws SQLException {
        var properties = new Properties();
        properties.setProperty("user", SUPERUSER);
        properties.setProperty("password", secrets.superuser().password());
        try {
            // Not DriverManager, which looks for drivers in a class loader that may not be ours.
            var connection = new Driver().connect(jdbcUrl(port, database), properties);
            if (connection == null) {
                throw new SQLException("Not an address of PostgreSQL: " + jdbcUrl(port, database));
            }
            return connection;
        } catch (SQLException e) {
            if (WRONG_PASSWORD.equals(e.getSQLState())) {
                throw new CannotStart(
                        "The passwords in secrets.properties are not those of the data beside it. Restore both from"
                                + " the same backup.",
                        e);
            }
            throw e;
        }
    }

    private static void createRole(Connection connection, Login login) throws SQLException {
        if (exists(connection, "SELECT 1 FROM pg_roles WHERE rolname = '" + login.name() + "'")) {
            return;
        }
        connection.setAutoCommit(false);
        execute(
                connection,
                "CREATE ROLE %s LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOREPLICATION NOBYPASSRLS"
                        .formatted(login.name()),
                "ALTER ROLE %s SET search_path = demebook".formatted(login.name()));
        // Hashed here, so that the password itself is in no log.
        connection
                .unwrap(PGConnection.class)
                .alterUserPassword(login.name(), login.password().toCharArray(), "scram-sha-256");
        connection.commit();
        connection.setAutoCommit(true);
    }

    /** Nobody signs in by it: the application's role takes it on. It inherits nothing of it otherwise. */
    private static void createRegisterRole(Connection connection) throws SQLException {
        if (!exists(connection, "SELECT 1 FROM pg_roles WHERE rolname = '" + REGISTER + "'")) {
            connection.setAutoCommit(false);
            execute(
                    connection,
                    "CREATE ROLE %s NOLOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOREPLICATION NOBYPASSRLS"
                            .formatted(REGISTER),
                    "ALTER ROLE %s NOINHERIT".formatted(APP),
                    "GRANT %s TO %s".formatted(REGISTER, APP));
            connection.commit();
            connection.setAutoCommit(true);
        }
    }

    private static void createSchema(Connection connection) throws SQLException {
        connection.setAutoCommit(false);
        execute(
                connection,
                "REVOKE CREATE ON DATABASE demebook FROM PUBLIC",
                "REVOKE CREATE ON SCHEMA public FROM PUBLIC",
                "SET LOCAL ROLE demebook_owner",
                "CREATE SCHEMA demebook",
                "GRANT USAGE ON SCHEMA demebook TO demebook_app");
        connection.commit();
    }

    private static boolean exists(Connection connection, String query) throws SQLException {
        try (var statement = connection.createStatement();
                var rows = statement.executeQuery(query)) {
            return rows.next();
        }
    }

    private static void execute(Connection connection, String... statements) throws SQLException {
        try (var statement = connection.createStatement()) {
            for (var sql : statements) {
                statement.execute(sql);
            }
        }
    }
}
