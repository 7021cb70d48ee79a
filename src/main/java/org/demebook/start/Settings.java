package org.demebook.start;

import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfig;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The few settings that are needed before the server starts, from the places where the server looks too. */
final class Settings {
    private static final int ABOVE_THE_DEFAULTS = 260;

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
        return config.getOptionalValue("quarkus.datasource.jdbc.url", String.class).isPresent();
    }

    boolean signsInLocally() {
        return config.getOptionalValue("quarkus.profile", String.class)
                .map(profiles -> !profiles.contains("keycloak"))
                .orElse(true);
    }
}
