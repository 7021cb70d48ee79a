package org.demebook.start;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;

/**
 * A PostgreSQL server of our own, for an operator who has none: unpacked, set up and run below the state folder.
 *
 * <p>It listens on loopback only, asks everybody for a password, and keeps its state here:
 *
 * <pre>
 * demebook.lock                   held while a server runs, so that there is one at a time
 * postgresql/bin-VERSION/         programs
 * postgresql/data/                data, of one major version of PostgreSQL
 * postgresql/secrets.properties   passwords; a copy of the data is of no use without them
 * postgresql/log/
 * </pre>
 *
 * <p>PostgreSQL outlives a killed Java process; the next start on the same folder stops it first. {@link #close} stops it
 * in good order: calling it from a shutdown hook is the caller's part. A signal from the terminal does not reach it.
 *
 * <p>Wherever a method says it throws {@code CannotStart}, the message is meant for the operator.
 */
public final class LocalPostgres implements AutoCloseable {

    /** What a crash of the machine may cost. */
    public enum Durability {
        /** Nothing that was committed: every commit waits for the disk. */
        FULL,
        /** Everything: for tests, which start anew anyway. */
        NONE
    }

    /** A role and its password, which is URL-safe. */
    public record Login(String name, String password) {

        @Override
        public String toString() {
            return name + " (password withheld)";
        }
    }

    private static final int ANY_PORT = 0;
    private static final int ATTEMPTS_TO_FIND_A_PORT = 3;

    private final StateLock lock;
    private final PostgresPrograms programs;
    private final Secrets secrets;
    private final int port;
    private boolean closed;

    private LocalPostgres(StateLock lock, PostgresPrograms programs, Secrets secrets, int port) {
        this.lock = lock;
        this.programs = programs;
        this.secrets = secrets;
        this.port = port;
    }

    /**
     * Starts PostgreSQL on a free port.
     *
     * <p>A first start unpacks 60 MB and takes 3 to 5 s, a later one well under 1 s; after a crash it takes as long as
     * PostgreSQL's recovery.
     *
     * @param stateFolder is created if need be
     * @throws CannotStart if another server uses the folder, its data are of another major version of PostgreSQL, or
     *     PostgreSQL did not start
     */
    public static LocalPostgres start(Path stateFolder, Durability durability) {
        return start(stateFolder, durability, ANY_PORT);
    }

    /**
     * Starts PostgreSQL on the given port of 127.0.0.1.
     *
     * @throws CannotStart also if another program has the port
     * @see #start(Path, Durability)
     */
    public static LocalPostgres start(Path stateFolder, Durability durability, int port) {
        try {
            var stateRoot = Files.createDirectories(stateFolder).toRealPath();
            var lock = StateLock.take(stateRoot);
            try {
                return start(lock, stateRoot.resolve("postgresql"), durability, port);
            } catch (IOException | RuntimeException e) {
                lock.release();
                throw e;
            }
        } catch (IOException e) {
            throw new CannotStart(
                    "The database folder in %s could not be prepared: %s. Check that this user may write there and that the disk is not full."
                            .formatted(stateFolder, e),
                    e);
        }
    }

    private static LocalPostgres start(StateLock lock, Path folder, Durability durability, int fixedPort)
            throws IOException {
        var data = new DataFolder(folder.resolve("data"));
        data.requireReadableByThisBuild();

        Folders.createPrivate(folder);
        var secrets = Secrets.ofFolder(folder, data.exists());
        var bin = PostgresBinaries.unpackInto(folder);
        var programs = new PostgresPrograms(bin, data.path(), folder.resolve("log"), PostgresUser.forFolder(folder));
        data.stopPostmasterLeftBehind(programs);
        data.deleteUnfinished();
        if (!data.exists()) {
            data.create(programs, secrets, durability);
        }

        int port = startOnPort(programs, data, durability, fixedPort);
        try {
            new DatabaseSetup(port, secrets).run();
        } catch (SQLException e) {
            programs.stop();
            throw new CannotStart(
                    "PostgreSQL started, but its roles and the database could not be set up: %s\nIts log ends with:\n%s"
                            .formatted(e.getMessage(), programs.serverLogTail()),
                    e);
        } catch (RuntimeException e) {
            programs.stop();
            throw e;
        }
        return new LocalPostgres(lock, programs, secrets, port);
    }

    private static int startOnPort(PostgresPrograms programs, DataFolder data, Durability durability, int fixedPort)
            throws IOException {
        if (fixedPort != ANY_PORT && !isFree(fixedPort)) {
            throw new CannotStart(
                    "Port %d of 127.0.0.1, on which the database should listen, is taken by another program. Stop that program or choose another port."
                            .formatted(fixedPort));
        }
        for (int attempt = 1; ; attempt++) {
            int port = fixedPort == ANY_PORT ? freePort() : fixedPort;
            data.configure(programs.user(), port, durability);
            try {
                programs.start();
                return port;
            } catch (CannotStart e) {
                // Between our look and PostgreSQL's, another program may have taken the port.
                boolean worthAnotherPort = fixedPort == ANY_PORT && attempt < ATTEMPTS_TO_FIND_A_PORT && !isFree(port);
                if (!worthAnotherPort) {
                    throw e;
                }
            }
        }
    }

    private static boolean isFree(int port) {
        try (var socket = new ServerSocket()) {
            socket.bind(new InetSocketAddress(InetAddress.getByName("127.0.0.1"), port));
            return true;
        } catch (IOException taken) {
            return false;
        }
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            return socket.getLocalPort();
        }
    }

    /** Where the database is; without a password in it. */
    public String jdbcUrl() {
        return DatabaseSetup.jdbcUrl(port, DatabaseSetup.DATABASE);
    }

    public int port() {
        return port;
    }

    /** Owns the database and its schema: for migrations. Row-level security does not bind it. */
    public Login owner() {
        return secrets.owner();
    }

    /** Owns nothing and may only what the migrations grant: for everything that serves a request. */
    public Login app() {
        return secrets.app();
    }

    /** Stops PostgreSQL, ending open connections, and gives the folder free. Does nothing the second time. */
    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        try {
            programs.stop();
        } finally {
            lock.release();
        }
    }
}
