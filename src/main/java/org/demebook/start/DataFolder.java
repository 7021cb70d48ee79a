package org.demebook.start;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.demebook.start.LocalPostgres.Durability;

/** PostgreSQL's data folder. It is there as a whole or not at all: initdb works beside it. */
record DataFolder(Path path) {

    private static final int CONNECTIONS = 60;

    boolean exists() {
        return Files.exists(path);
    }

    /** @throws CannotStart if the data were written by another major version; there is no reading these */
    void requireReadableByThisBuild() throws IOException {
        if (!exists()) {
            return;
        }
        var versionFile = path.resolve("PG_VERSION");
        if (!Files.exists(versionFile)) {
            throw new CannotStart(
                    "%s has no file PG_VERSION, so it is not PostgreSQL's data. Restore the folder from a backup, or move it away to begin with an empty register."
                            .formatted(path));
        }
        var version = Files.readString(versionFile).strip();
        if (!version.equals(PostgresBinaries.MAJOR_VERSION)) {
            throw new CannotStart("""
                The data in %s are of PostgreSQL %s; this build brings PostgreSQL %s, which cannot read them. Nothing was changed.
                Either start the build you used before, export, start this one on a new folder, and import;
                or run a PostgreSQL %s of your own on these data and set quarkus.datasource.jdbc.url to it.\
                """.formatted(path, version, PostgresBinaries.VERSION, version));
        }
    }

    /**
     * Stops the PostgreSQL that a killed server left running on these data. Only for the holder of the lock: otherwise
     * it may be in use.
     */
    void stopPostmasterLeftBehind(PostgresPrograms programs) throws IOException {
        var pidFile = path.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return;
        }
        var lines = new ArrayList<>(Files.readAllLines(pidFile));
        if (lines.isEmpty() || !lines.get(0).strip().matches("[1-9][0-9]{0,9}")) {
            Files.delete(pidFile); // cut short by a crash of the machine, so nothing runs; PostgreSQL would refuse it
            return;
        }
        var process = ProcessHandle.of(Long.parseLong(lines.get(0).strip()));
        if (process.isPresent() && isOurs(process.get())) {
            programs.stop();
        } else if (process.isPresent()) {
            disown(pidFile, lines);
        }
    }

    private boolean isOurs(ProcessHandle process) {
        return process.info()
                .arguments()
                .map(arguments -> Arrays.asList(arguments).containsAll(List.of("-D", path.toString())))
                .orElse(false);
    }

    /**
     * Another program has got the number since; PostgreSQL would take it for a postmaster. A number that no process can
     * have, rather than no file, lets PostgreSQL still see from the other lines whether a child of the old one lives on.
     */
    private static void disown(Path pidFile, List<String> lines) throws IOException {
        lines.set(0, String.valueOf(Integer.MAX_VALUE));
        Files.write(pidFile, lines);
    }

    /**
     * Deletes what starts that were cut off left of data that never came to be. Their initdb may have outlived them and
     * still write there, in a folder of its own; what cannot be deleted now goes at the next start.
     */
    void deleteUnfinished() throws IOException {
        try (var folders = Files.newDirectoryStream(path.getParent(), "data.new-*")) {
            for (var unfinished : folders) {
                try {
                    Folders.deleteRecursively(unfinished);
                } catch (IOException | UncheckedIOException stillWrittenTo) {
                    continue;
                }
            }
        }
    }

    void create(PostgresPrograms programs, Secrets secrets, Durability durability) throws IOException {
        var unfinished = Files.createTempDirectory(path.getParent(), "data.new-"); // for its owner only
        programs.user().give(unfinished);

        var passwordFile = path.resolveSibling("superuser-password");
        try {
            Folders.writePrivate(passwordFile, secrets.superuser().password() + "\n");
            programs.user().give(passwordFile);
            programs.initdb(initdbOptions(unfinished, passwordFile, durability));
        } finally {
            Files.deleteIfExists(passwordFile);
        }
        Files.writeString(
                unfinished.resolve("postgresql.conf"),
                "\n# Written at every start, and stronger than what stands above.\ninclude 'demebook.conf'\n",
                StandardOpenOption.APPEND,
                StandardOpenOption.SYNC);
        Folders.moveIntoPlace(unfinished, path);
    }

    private static List<String> initdbOptions(Path folder, Path passwordFile, Durability durability) {
        var options = new ArrayList<>(List.of(
                "--pgdata=" + folder,
                "--username=" + DatabaseSetup.SUPERUSER,
                "--pwfile=" + passwordFile,
                "--auth=scram-sha-256",
                "--encoding=UTF8",
                "--data-checksums",
                // PostgreSQL's own rules of order and case: an update of the operating system cannot break an index.
                "--locale-provider=builtin",
                "--builtin-locale=C.UTF-8",
                "--locale=C"));
        if (durability == Durability.NONE) {
            options.add("--no-sync");
        }
        return options;
    }

    void configure(PostgresUser user, int port, Durability durability) throws IOException {
        var settings = """
            listen_addresses = '127.0.0.1'
            port = %d
            unix_socket_directories = ''
            max_connections = %d
            timezone = 'UTC'
            log_timezone = 'UTC'
            log_checkpoints = off
            fsync = %3$s
            synchronous_commit = %3$s
            full_page_writes = %3$s
            """.formatted(port, CONNECTIONS, durability == Durability.FULL ? "on" : "off");
        write(user, "demebook.conf", settings);
        write(user, "pg_hba.conf", "host all all 127.0.0.1/32 scram-sha-256\n");
    }

    private void write(PostgresUser user, String name, String text) throws IOException {
        var file = path.resolve(name);
        Folders.writePrivate(file, text);
        user.give(file);
    }
}
