package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.assertj.core.api.AbstractThrowableAssert;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.demebook.start.LocalPostgres.Durability;
import org.demebook.start.LocalPostgres.Login;

/** Looks at a PostgreSQL from outside the launcher: over JDBC, through the process table, in its folder. */
final class LocalPostgresProbe {

    private LocalPostgresProbe() {}

    /** Quickly: not for tests of durability. */
    static LocalPostgres start(Path folder) {
        return LocalPostgres.start(folder, Durability.NONE);
    }

    static AbstractThrowableAssert<?, ?> assertCannotStart(ThrowingCallable start) {
        return assertThatThrownBy(start).isInstanceOf(CannotStart.class);
    }

    /** Where tests run as root without user namespaces, PostgreSQL runs as somebody else. */
    static void letOthersPassThrough(Path folder) throws IOException {
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx--x--x"));
    }

    static Path bin(Path folder) {
        return folder.resolve("postgresql/bin-" + PostgresBinaries.VERSION);
    }

    static Path secrets(Path folder) {
        return folder.resolve("postgresql/secrets.properties");
    }

    static long postmasterPid(Path folder) throws IOException {
        return Long.parseLong(Files.readAllLines(folder.resolve("postgresql/data/postmaster.pid"))
                .get(0));
    }

    /** One that has ended may stay in the list until its parent looks, but has no command line any more. */
    static boolean isGone(long pid) throws InterruptedException {
        for (int look = 0; look < 50; look++) {
            var process = ProcessHandle.of(pid);
            if (process.isEmpty() || process.get().info().arguments().isEmpty()) {
                return true;
            }
            Thread.sleep(20);
        }
        return false;
    }

    record Other(int exitCode, String output) {}

    static Other inAnotherProcess(Path folder) throws IOException, InterruptedException {
        var java = startInAnotherProcess(folder);
        var output = new String(java.getInputStream().readAllBytes());
        return new Other(java.waitFor(), output);
    }

    static Process startInAnotherProcess(Path folder) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        LeavesItBehind.class.getName(),
                        folder.toString())
                .redirectErrorStream(true)
                .start();
    }

    /** A server that dies as by kill -9: no shutdown hook, no close. */
    static final class LeavesItBehind {

        static final int HALTED = 9;

        private LeavesItBehind() {}

        public static void main(String... args) throws SQLException {
            var postgres = start(Path.of(args[0]));
            tell(postgres, postgres.owner(), "CREATE TABLE animal AS SELECT 'Luna' AS name");
            Runtime.getRuntime().halt(HALTED);
        }
    }

    static Connection connect(LocalPostgres postgres, Login login) throws SQLException {
        return DriverManager.getConnection(postgres.jdbcUrl(), login.name(), login.password());
    }

    static Connection superuser(LocalPostgres postgres, Path folder) throws SQLException, IOException {
        return connect(
                postgres, Secrets.ofFolder(folder.resolve("postgresql"), true).superuser());
    }

    static void tell(LocalPostgres postgres, Login login, String sql) throws SQLException {
        try (var connection = connect(postgres, login);
                var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    static String ask(LocalPostgres postgres, Login login, String sql) throws SQLException {
        try (var connection = connect(postgres, login)) {
            return ask(connection, sql);
        }
    }

    static String ask(Connection connection, String sql) throws SQLException {
        try (var statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            assertThat(rows.next()).as(sql).isTrue();
            return rows.getString(1);
        }
    }
}
