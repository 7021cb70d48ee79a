package org.demebook.start;

import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfig;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The few settings that are needed before the server starts, from the places where the server looks too. */
final class Settings {
    private static final int ABOVE_THE_DEFAULTS = 260;
    private static final String KEYCLOAK_SECRET = "demebook.keycloak.secret";
    private static final List<String> KEYCLOAK =
            List.of("demebook.keycloak.url", KEYCLOAK_SECRET, "demebook.keycloak.admin-secret");
    private static final int SHORTEST_SECRET = 32;

    private final SmallRyeConfig config;

    Settings() {
        var builder = new SmallRyeConfigBuilder().addSystemSources();
        var file = Path.of("config", "application.properties");
        if (Files.isReadable(file)) {
            try {
                builder.withSources(new PropertiesConfigSource(file.toUri().toURL(), ABOVE_THE_DEFAULTS));
            } catch (IOException e) {
                throw new CannotStart("The settings in %s cannot be read: %s".formatted(file.toAbsolutePath(), e), e);
            }
        }
        config = builder.build();
    }

    Path stateFolder() {
        return config.getOptionalValue("demebook.state", String.class)
                .map(Path::of)
                .orElse(Path.of(System.getProperty("user.home"), ".demebook", "node"))
                .toAbsolutePath();
    }

    boolean hasDatabase() {
        return config.getOptionalValue("quarkus.datasource.jdbc.url", String.class)
                .isPresent();
    }

    /** @throws CannotStart if a setting is missing without which nobody could sign in by Keycloak */
    void requireKeycloak() {
        var missing = KEYCLOAK.stream()
                .filter(name -> config.getOptionalValue(name, String.class).isEmpty())
                .toList();
        if (!missing.isEmpty()) {
            throw new CannotStart(
                    "The profile keycloak needs %s; as environment variables these are %s. See deploy/keycloak/README.md."
                            .formatted(String.join(" and ", missing), environment(missing)));
        }
        var secret = config.getValue(KEYCLOAK_SECRET, String.class);
        if (secret.length() < SHORTEST_SECRET) {
            throw new CannotStart(
                    "%s has %d characters. It also encrypts the cookies of the browsers: take at least %d random ones, here and in Keycloak."
                            .formatted(KEYCLOAK_SECRET, secret.length(), SHORTEST_SECRET));
        }
    }

    private static String environment(List<String> names) {
        return names.stream()
                .map(name -> name.toUpperCase(Locale.ROOT).replaceAll("[.-]", "_"))
                .collect(Collectors.joining(" and "));
    }

    boolean signsInLocally() {
        return config.getOptionalValue("quarkus.profile", String.class)
                .map(profiles -> !profiles.contains("keycloak"))
                .orElse(true);
    }
}
