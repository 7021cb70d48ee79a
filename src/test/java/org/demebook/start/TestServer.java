package org.demebook.start;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import org.demebook.start.LocalPostgres.Durability;

/** What the server under test stands on: a real PostgreSQL of its own, on an empty folder, and a fresh key for sign-in. */
public class TestServer implements QuarkusTestResourceLifecycleManager {
    public static final String ADMINISTRATOR_PASSWORD = "only-for-tests-4711";
    private static final Path STATE = Path.of("target", "test-state").toAbsolutePath();

    /** Nothing that a test wrote has to survive a power cut; figures are taken on a database that flushes every commit. */
    private static final Durability DURABILITY =
            Boolean.getBoolean("demebook.figures") ? Durability.FULL : Durability.NONE;

    private static LocalPostgres postgres;

    @Override
    public Map<String, String> start() {
        deleteAll(STATE.resolve("postgresql").resolve("data"));
        postgres = LocalPostgres.start(STATE, DURABILITY);
        var properties = new HashMap<>(Main.databaseProperties(postgres));
        properties.putAll(SignInKey.in(STATE).properties());
        properties.put("demebook.administrator.password", ADMINISTRATOR_PASSWORD);
        properties.put("demebook.state", STATE.toString());
        properties.put("demebook.federation", "on");
        properties.put("demebook.federation.port", "0");
        // as behind a reverse proxy: each test guesses from an address of its own
        properties.put("quarkus.http.proxy.proxy-address-forwarding", "true");
        properties.put("quarkus.http.proxy.allow-x-forwarded", "true");
        return properties;
    }

    @Override
    public void stop() {
        if (postgres != null) {
            postgres.close();
        }
    }

    /** The database as its owner sees it; for tests that look behind the server's back. */
    public static LocalPostgres database() {
        return postgres;
    }

    /** Where the server under test has the keys by which other nodes know it. */
    public static Path federationFolder() {
        return STATE.resolve("federation");
    }

    static void deleteAll(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (var files = Files.walk(folder)) {
            for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
