package org.demebook.start;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Properties;
import org.demebook.start.LocalPostgres.Login;

/** The passwords of the three roles, made at the first start and readable by the server's user only. */
record Secrets(Login superuser, Login owner, Login app) {

    private static final int PASSWORD_BYTES = 32;

    /**
     * Reads the secrets, or makes them if there are no data yet that know others.
     *
     * @throws CannotStart if there are data but no secrets
     */
    static Secrets ofFolder(Path folder, boolean dataExist) throws IOException {
        var file = folder.resolve("secrets.properties");
        if (!Files.exists(file)) {
            if (dataExist) {
                throw new CannotStart(
                        "%s is missing, and without it nobody can sign in to the data beside it. Restore it from the backup the data belong to."
                                .formatted(file));
            }
            create(file);
        }
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        return read(file);
    }

    private static void create(Path file) throws IOException {
        var unfinished = file.resolveSibling("secrets.properties.new");
        Folders.writePrivate(unfinished, """
            # Passwords of the database beside this file. Back it up with the data.
            superuser.password=%s
            owner.password=%s
            app.password=%s
            """.formatted(newPassword(), newPassword(), newPassword()));
        Folders.moveIntoPlace(unfinished, file);
    }

    private static String newPassword() {
        byte[] bytes = new byte[PASSWORD_BYTES];
        new SecureRandom().nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    private static Secrets read(Path file) throws IOException {
        var properties = new Properties();
        try (var reader = Files.newBufferedReader(file)) {
            properties.load(reader);
        }
        return new Secrets(
                new Login(DatabaseSetup.SUPERUSER, password(properties, "superuser", file)),
                new Login(DatabaseSetup.OWNER, password(properties, "owner", file)),
                new Login(DatabaseSetup.APP, password(properties, "app", file)));
    }

    private static String password(Properties properties, String role, Path file) {
        var password = properties.getProperty(role + ".password");
        if (password == null || password.isBlank()) {
            throw new CannotStart("%s has no line %s.password=…. Restore the file from the backup the data belong to."
                    .formatted(file, role));
        }
        return password;
    }
}
