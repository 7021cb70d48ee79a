package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.demebook.start.LocalPostgresProbe.ask;
import static org.demebook.start.LocalPostgresProbe.assertCannotStart;
import static org.demebook.start.LocalPostgresProbe.bin;
import static org.demebook.start.LocalPostgresProbe.inAnotherProcess;
import static org.demebook.start.LocalPostgresProbe.isGone;
import static org.demebook.start.LocalPostgresProbe.letOthersPassThrough;
import static org.demebook.start.LocalPostgresProbe.postmasterPid;
import static org.demebook.start.LocalPostgresProbe.secrets;
import static org.demebook.start.LocalPostgresProbe.start;
import static org.demebook.start.LocalPostgresProbe.startInAnotherProcess;
import static org.demebook.start.LocalPostgresProbe.superuser;
import static org.demebook.start.LocalPostgresProbe.tell;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import org.demebook.start.LocalPostgres.Durability;
import org.demebook.start.LocalPostgres.Login;
import org.demebook.start.LocalPostgresProbe.LeavesItBehind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Starting again, after whatever happened the time before: nothing is lost, nothing is left running. */
class LocalPostgresRestartTest {

    @TempDir
    private static Path programs;

    @TempDir
    private Path folder;

    @BeforeAll
    static void unpack_the_programs_once() throws IOException {
        letOthersPassThrough(programs);
        PostgresBinaries.unpackInto(Files.createDirectory(programs.resolve("postgresql")));
    }

    @BeforeEach
    void take_the_programs_from_there() throws IOException {
        letOthersPassThrough(folder);
        Files.createDirectory(folder.resolve("postgresql"));
        Files.createSymbolicLink(bin(folder), bin(programs));
    }

    @AfterEach
    void leave_them_there() throws IOException {
        if (Files.isSymbolicLink(bin(folder))) {
            Files.delete(bin(folder));
        }
    }

    @Test
    void only_tests_may_give_up_durability_for_speed() throws SQLException {
        try (var quick = start(folder)) {
            assertThat(ask(quick, quick.owner(), "SHOW fsync")).isEqualTo("off");
        }
    }

    @Test
    void data_and_passwords_survive_a_restart() throws SQLException {
        Login ownerBefore;
        try (var first = start(folder)) {
            ownerBefore = first.owner();
            tell(first, ownerBefore, "CREATE TABLE animal AS SELECT 'Luna' AS name");
        }
        try (var second = start(folder)) {
            assertThat(ask(second, ownerBefore, "SELECT name FROM animal")).isEqualTo("Luna");
        }
    }

    @Test
    void closing_stops_it_and_closing_again_does_nothing() throws Exception {
        var postgres = start(folder);
        long postmaster = postmasterPid(folder);

        postgres.close();
        postgres.close();

        assertThat(isGone(postmaster)).isTrue();
        assertThat(folder.resolve("postgresql/data/postmaster.pid")).doesNotExist();
    }

    @Test
    void a_postmaster_left_behind_by_a_dead_process_is_stopped_and_its_data_are_there() throws Exception {
        assertThat(inAnotherProcess(folder).exitCode()).isEqualTo(LeavesItBehind.HALTED);
        long leftBehind = postmasterPid(folder);
        assertThat(isGone(leftBehind)).isFalse();

        try (var next = start(folder)) {
            assertThat(isGone(leftBehind)).isTrue();
            assertThat(postmasterPid(folder)).isNotEqualTo(leftBehind);
            assertThat(ask(next, next.owner(), "SELECT name FROM animal")).isEqualTo("Luna");
        }
    }

    @Test
    void a_pid_that_another_program_has_got_since_is_no_hindrance_and_that_program_lives_on() throws Exception {
        start(folder).close();
        var another = new ProcessBuilder("sleep", "60").start();
        try {
            Files.writeString(
                    folder.resolve("postgresql/data/postmaster.pid"),
                    another.pid() + "\n" + folder.resolve("postgresql/data") + "\n");

            start(folder).close();

            assertThat(another.isAlive()).isTrue();
        } finally {
            another.destroy();
        }
    }

    @Test
    void a_pid_file_cut_short_by_a_crash_is_no_hindrance() throws IOException {
        start(folder).close();
        Files.createFile(folder.resolve("postgresql/data/postmaster.pid"));

        start(folder).close();
    }

    @Test
    void a_killed_postmaster_recovers_and_loses_nothing_committed() throws Exception {
        var first = LocalPostgres.start(folder, Durability.FULL);
        tell(first, first.owner(), "CREATE TABLE animal AS SELECT 'Luna' AS name");
        ProcessHandle.of(postmasterPid(folder)).orElseThrow().destroyForcibly();
        first.close();

        try (var second = start(folder)) {
            assertThat(ask(second, second.owner(), "SELECT name FROM animal")).isEqualTo("Luna");
        }
    }

    @Test
    void a_first_start_that_was_cut_off_is_begun_anew() throws Exception {
        Files.createDirectories(folder.resolve("postgresql/data.new-1/base"));
        Files.writeString(folder.resolve("postgresql/data.new-1/PG_VERSION"), "18\n");
        Files.writeString(folder.resolve("postgresql/secrets.properties.new"), "superuser.pass");

        try (var postgres = start(folder)) {
            assertThat(ask(postgres, postgres.app(), "SELECT current_schema")).isEqualTo("demebook");
        }
        assertThat(folder.resolve("postgresql/data.new-1")).doesNotExist();
    }

    @Test
    void a_first_start_killed_in_the_middle_of_initdb_is_made_good_by_the_next() throws Exception {
        var killed = startInAnotherProcess(folder);
        while (killed.isAlive() && !initdbIsAtWork()) {
            Thread.sleep(5);
        }
        killed.destroyForcibly().waitFor();

        try (var postgres = start(folder)) {
            assertThat(ask(postgres, postgres.app(), "SELECT current_schema")).isEqualTo("demebook");
        }
    }

    private boolean initdbIsAtWork() throws IOException {
        try (var unfinished = Files.newDirectoryStream(folder.resolve("postgresql"), "data.new-*")) {
            for (var data : unfinished) {
                return Files.exists(data.resolve("base"));
            }
            return false;
        }
    }

    @Test
    void programs_half_unpacked_are_unpacked_anew() throws IOException {
        Files.delete(bin(folder));
        var unfinished =
                Files.createDirectories(bin(folder).resolveSibling(bin(folder).getFileName() + ".new/bin"));
        Files.writeString(unfinished.resolve("postgres"), "half");

        start(folder).close();

        assertThat(bin(folder).resolve("bin/postgres")).isExecutable();
        assertThat(unfinished).doesNotExist();
    }

    @Test
    void roles_and_schema_that_a_cut_off_start_left_out_are_made_by_the_next() throws Exception {
        try (var first = start(folder);
                var connection = superuser(first, folder);
                var statement = connection.createStatement()) {
            statement.execute("DROP SCHEMA demebook");
            statement.execute("DROP ROLE demebook_app");
        }
        try (var second = start(folder)) {
            assertThat(ask(second, second.app(), "SELECT current_schema")).isEqualTo("demebook");
        }
    }

    @Test
    void data_of_another_major_version_are_refused_untouched_with_what_to_do() throws IOException {
        Files.delete(bin(folder));
        Files.createDirectory(folder.resolve("postgresql/data"));
        Files.writeString(folder.resolve("postgresql/data/PG_VERSION"), "15\n");

        assertCannotStart(() -> start(folder))
                .hasMessageContaining("PostgreSQL 15")
                .hasMessageContaining("PostgreSQL " + PostgresBinaries.VERSION)
                .hasMessageContaining("export")
                .hasMessageContaining("import")
                .hasMessageContaining("quarkus.datasource.jdbc.url");
        try (var files = Files.list(folder.resolve("postgresql"))) {
            assertThat(files).containsExactly(folder.resolve("postgresql/data"));
        }
    }

    @Test
    void a_refused_start_gives_the_folder_free() throws IOException {
        Files.createDirectory(folder.resolve("postgresql/data"));
        assertCannotStart(() -> start(folder)).hasMessageContaining("PG_VERSION");
        Files.delete(folder.resolve("postgresql/data"));

        start(folder).close();
    }

    @Test
    void data_without_their_secrets_are_refused() throws IOException {
        start(folder).close();
        Files.delete(secrets(folder));

        assertCannotStart(() -> start(folder))
                .hasMessageContaining(secrets(folder).toString());
    }

    @Test
    void data_with_the_secrets_of_others_are_refused_and_nothing_is_left_running() throws IOException {
        start(folder).close();
        Files.delete(secrets(folder));
        Secrets.ofFolder(folder.resolve("postgresql"), false);

        assertCannotStart(() -> start(folder)).hasMessageContaining("secrets.properties");
        assertThat(folder.resolve("postgresql/data/postmaster.pid")).doesNotExist();
    }

    @Test
    void a_given_port_is_taken_or_the_start_is_refused_naming_it() throws IOException {
        int port;
        try (var other = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            port = other.getLocalPort();
            assertCannotStart(() -> LocalPostgres.start(folder, Durability.NONE, other.getLocalPort()))
                    .hasMessageContaining("Port " + port);
        }
        try (var postgres = LocalPostgres.start(folder, Durability.NONE, port)) {
            assertThat(postgres.jdbcUrl()).isEqualTo("jdbc:postgresql://127.0.0.1:" + port + "/demebook");
        }
    }

    @Test
    void what_postgresql_says_when_it_does_not_start_is_in_the_message() throws IOException {
        start(folder).close();
        Files.writeString(folder.resolve("postgresql/data/postgresql.conf"), "no_such_setting = 1\n");

        assertCannotStart(() -> start(folder)).hasMessageContaining("no_such_setting");
    }

    @Test
    void as_root_it_runs_as_the_user_whose_the_folder_is() throws IOException {
        assumeThat(System.getProperty("user.name")).isEqualTo("root");
        assumeThat(Path.of("/usr/sbin/runuser")).exists();
        start(folder).close();
        chownToNobody(folder.resolve("postgresql"));

        try (var postgres = start(folder)) {
            var postmaster = ProcessHandle.of(postmasterPid(folder)).orElseThrow();
            assertThat(postmaster.info().user()).contains("nobody");
            assertThat(Files.getOwner(secrets(folder)).getName()).isEqualTo("root");
            assertThat(postgres.port()).isPositive();
        }
    }

    private static void chownToNobody(Path folder) throws IOException {
        var nobody = folder.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName("nobody");
        for (var part : List.of("data", "log")) {
            try (var paths = Files.walk(folder.resolve(part))) {
                for (var path : paths.toList()) {
                    Files.setOwner(path, nobody);
                }
            }
        }
        Files.setOwner(folder, nobody);
    }
}
