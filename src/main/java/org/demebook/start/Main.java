package org.demebook.start;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.demebook.peering.UnusableIdentity;
import org.demebook.start.LocalPostgres.Durability;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Starts the server. Where {@code quarkus.datasource.jdbc.url} is set, on that PostgreSQL; otherwise on one of its own, in
 * the folder {@code demebook.state}.
 */
@QuarkusMain
public final class Main {
    private static final Logger LOG = Logger.getLogger(Main.class);

    private static final Duration LONGEST_GOODBYE = Duration.ofSeconds(10);

    private Main() {}

    public static void main(String... args) {
        try {
            start(args);
        } catch (CannotStart refused) {
            System.err.println("Demebook cannot start.");
            System.err.println(refused.getMessage());
            System.exit(1);
        }
    }

    private static void start(String... args) {
        if (Boolean.getBoolean("demebook.stop-with-parent")) {
            stopWithParent();
        }
        DemoNodes.prepare();
        var settings = new Settings();
        var state = settings.stateFolder();
        System.setProperty("demebook.state", state.toString());
        if (settings.signsInLocally()) {
            take(SignInKey.in(state).properties());
        } else {
            settings.requireKeycloak();
        }
        @Nullable LocalPostgres postgres = null;
        if (!settings.hasDatabase()) {
            postgres = LocalPostgres.start(state, Durability.FULL);
            take(databaseProperties(postgres));
        }
        run(postgres, args);
    }

    private static void run(@Nullable LocalPostgres postgres, String... args) {
        var ended = new CountDownLatch(1);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> awaitEnd(ended, postgres), "database-last"));
        Quarkus.run(
                null,
                (exitCode, failure) -> {
                    if (failure != null) { // Quarkus leaves telling it to us
                        tell(failure);
                    }
                    ended.countDown();
                    System.exit(exitCode);
                },
                args);
    }

    private static void tell(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof UnusableIdentity) { // the operator's to mend: no stack to read
                System.err.println("Demebook cannot start.");
                System.err.println(cause.getMessage());
                return;
            }
        }
        LOG.error("The server could not be started", failure);
    }

    /**
     * Stops the database after the server has answered its last request, whether it ends by Ctrl-C, by a signal, by exit or
     * by failing to start. The Java process does not end before this has.
     */
    private static void awaitEnd(CountDownLatch ended, @Nullable LocalPostgres postgres) {
        try {
            if (!ended.await(LONGEST_GOODBYE.toSeconds(), TimeUnit.SECONDS)) {
                LOG.warn("The server did not end in time; its database is stopped all the same");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            if (postgres != null) {
                postgres.close();
            }
        }
    }

    /** What the server needs to reach a PostgreSQL of ours: migrations run as the owner, requests as a role that owns nothing. */
    static Map<String, String> databaseProperties(LocalPostgres postgres) {
        return Map.of(
                "quarkus.datasource.jdbc.url", postgres.jdbcUrl(),
                "quarkus.datasource.username", postgres.app().name(),
                "quarkus.datasource.password", postgres.app().password(),
                "quarkus.flyway.username", postgres.owner().name(),
                "quarkus.flyway.password", postgres.owner().password());
    }

    private static void take(Map<String, String> properties) {
        properties.forEach(System::setProperty);
    }

    /** A demo that lost the terminal it was started from should not go on unseen. */
    private static void stopWithParent() {
        ProcessHandle.current().parent().ifPresent(parent -> parent.onExit().thenRun(Quarkus::asyncExit));
    }
}
