package org.demebook.start;

import com.sun.security.auth.module.UnixSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * As whom PostgreSQL runs. It refuses to run as root; where we are root, it runs in a user namespace of its own, in which
 * it is nobody but still owns our files, or else as an ordinary user to whom the folder is given.
 */
final class PostgresUser {

    private static final String ROOT = "root";
    private static final List<String> ORDINARY_USERS = List.of("postgres", "nobody");

    private final List<String> prefix;
    private final @Nullable String name; // null: the user that we are

    private PostgresUser(List<String> prefix, @Nullable String name) {
        this.prefix = prefix;
        this.name = name;
    }

    /** @throws CannotStart if we are root and know no way to run a program as somebody else */
    static PostgresUser forFolder(Path folder) throws IOException {
        if (new UnixSystem().getUid() != 0) {
            return new PostgresUser(List.of(), null);
        }
        var owner = Files.getOwner(folder).getName();
        if (!owner.equals(ROOT)) {
            return ordinary(owner, folder);
        }
        if (succeeds(List.of("unshare", "-U", "true"))) {
            return new PostgresUser(List.of("unshare", "-U"), null);
        }
        for (var user : ORDINARY_USERS) {
            if (succeeds(List.of("runuser", "-u", user, "--", "true"))) {
                return ordinary(user, folder);
            }
        }
        throw new CannotStart(
                "PostgreSQL refuses to run as root, and here neither \"unshare -U\" (user namespaces) nor \"runuser -u postgres\" works. Start this server as an ordinary user who owns %s."
                        .formatted(folder.getParent()));
    }

    private static PostgresUser ordinary(String name, Path folder) throws IOException {
        var user = new PostgresUser(List.of("runuser", "-u", name, "--"), name);
        var stateFolder = folder.getParent();
        if (!succeeds(user.command(List.of("test", "-x", stateFolder.toString())))) {
            throw new CannotStart(
                    "PostgreSQL refuses to run as root; the user %s, as whom it would run, cannot reach %s. Let others pass through it and the folders above (chmod o+x), choose a folder such as /var/lib/demebook, or start this server as an ordinary user."
                            .formatted(name, stateFolder));
        }
        user.takeOver(folder);
        return user;
    }

    private void takeOver(Path folder) throws IOException {
        if (Files.getOwner(folder).getName().equals(name)) {
            return;
        }
        for (var kept : List.of("data", "log")) {
            if (Files.exists(folder.resolve(kept))) {
                try (var paths = Files.walk(folder.resolve(kept).toRealPath())) {
                    for (var path : paths.toList()) {
                        give(path);
                    }
                }
            }
        }
        give(folder); // last: its owner tells the next start that the rest is done
    }

    /** Makes PostgreSQL the owner of what we created for it. */
    void give(Path path) throws IOException {
        if (name != null) {
            var users = path.getFileSystem().getUserPrincipalLookupService();
            Files.setOwner(path, users.lookupPrincipalByName(name));
        }
    }

    List<String> command(List<String> program) {
        var command = new ArrayList<>(prefix);
        command.addAll(program);
        return command;
    }

    private static boolean succeeds(List<String> command) {
        try {
            var process = new ProcessBuilder(command)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return PostgresPrograms.exitCode(process) == 0;
        } catch (IOException notInstalled) {
            return false;
        }
    }
}
