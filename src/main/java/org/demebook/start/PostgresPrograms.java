package org.demebook.start;

import java.io.File;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;

/** Runs initdb and pg_ctl on one data folder, each with a log of its last run. */
final class PostgresPrograms {

    private static final long LARGEST_SERVER_LOG_BYTES = 10L << 20;
    private static final int LONGEST_TAIL_BYTES = 3_000;

    // Recovery after a crash may take minutes; pg_ctl returns at once when PostgreSQL gives up.
    private static final int PATIENCE_TO_START_SECONDS = 600;
    private static final int PATIENCE_TO_STOP_SECONDS = 60;

    private final Path bin;
    private final Path data;
    private final Path logFolder;
    private final Path serverLog;
    private final PostgresUser user;
    private long serverLogBytesBefore;

    PostgresPrograms(Path bin, Path data, Path logFolder, PostgresUser user) throws IOException {
        this.bin = bin;
        this.data = data;
        this.logFolder = logFolder;
        this.serverLog = logFolder.resolve("postgresql.log");
        this.user = user;
        Folders.createPrivate(logFolder);
        user.give(logFolder);
    }

    PostgresUser user() {
        return user;
    }

    /** @throws CannotStart with what initdb said */
    void initdb(List<String> options) throws IOException {
        require("initdb", run("initdb", options), "");
    }

    /**
     * Returns when PostgreSQL accepts connections.
     *
     * @throws CannotStart with what pg_ctl and PostgreSQL said
     */
    void start() throws IOException {
        if (Files.exists(serverLog) && Files.size(serverLog) > LARGEST_SERVER_LOG_BYTES) {
            Files.move(serverLog, logFolder.resolve("postgresql.log.old"), StandardCopyOption.REPLACE_EXISTING);
        }
        serverLogBytesBefore = Files.exists(serverLog) ? Files.size(serverLog) : 0;
        int exitCode = pgCtl("start", "-t", PATIENCE_TO_START_SECONDS, "-l", serverLog);
        require("pg_ctl start", exitCode, serverLogTail());
    }

    /** Returns when PostgreSQL has stopped. One that takes too long is cut off, and recovers at the next start. */
    void stop() {
        try {
            if (pgCtl("stop", "-m", "fast", "-t", PATIENCE_TO_STOP_SECONDS) != 0) {
                pgCtl("stop", "-m", "immediate", "-t", PATIENCE_TO_STOP_SECONDS);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private int pgCtl(String action, Object... options) throws IOException {
        var arguments = new ArrayList<>(List.of(action, "-w", "-D", data.toString()));
        for (var option : options) {
            arguments.add(option.toString());
        }
        return run("pg_ctl", arguments);
    }

    private int run(String program, List<String> arguments) throws IOException {
        var command = new ArrayList<>(List.of(bin.resolve(program).toString()));
        command.addAll(arguments);
        var builder = new ProcessBuilder(user.command(command))
                .directory(logFolder.toFile())
                .redirectInput(ProcessBuilder.Redirect.from(new File("/dev/null")))
                .redirectErrorStream(true)
                .redirectOutput(programLog(program).toFile());
        // The operator's settings for other PostgreSQL servers are not meant for this one.
        builder.environment().keySet().removeIf(variable -> variable.startsWith("PG"));
        builder.environment().put("LC_ALL", "C");
        return exitCode(builder.start());
    }

    private Path programLog(String program) {
        return logFolder.resolve(program + ".log");
    }

    /** Waits even when interrupted: leaving a half-run initdb or pg_ctl behind helps nobody. */
    static int exitCode(Process process) {
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return process.waitFor();
                } catch (InterruptedException e) {
                    interrupted = true;
                }
            }
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private void require(String what, int exitCode, String serverSaid) throws IOException {
        if (exitCode != 0) {
            throw new CannotStart("PostgreSQL's %s failed with exit code %d. The logs in %s end with:\n%s%s"
                    .formatted(what, exitCode, logFolder, tail(programLog(what.split(" ")[0]), 0), serverSaid));
        }
    }

    /** What PostgreSQL wrote last, since it was started. */
    String serverLogTail() throws IOException {
        return tail(serverLog, serverLogBytesBefore);
    }

    private static String tail(Path log, long from) throws IOException {
        if (!Files.exists(log)) {
            return "";
        }
        try (var file = new RandomAccessFile(log.toFile(), "r")) {
            long start = Math.max(from, file.length() - LONGEST_TAIL_BYTES);
            byte[] bytes = new byte[(int) (file.length() - start)];
            file.seek(start);
            file.readFully(bytes);
            return new String(bytes, StandardCharsets.UTF_8);
        }
    }
}
