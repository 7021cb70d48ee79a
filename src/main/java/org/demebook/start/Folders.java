package org.demebook.start;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** Files and folders that are there as a whole or not at all, and are nobody else's to read. */
final class Folders {

    private static final FileAttribute<Set<PosixFilePermission>> OWNER_ONLY_FOLDER =
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"));
    private static final FileAttribute<Set<PosixFilePermission>> OWNER_ONLY_FILE =
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

    private Folders() {}

    /** Creates the folder, or takes others' rights from one that is there. */
    static void createPrivate(Path folder) throws IOException {
        try {
            Files.createDirectory(folder, OWNER_ONLY_FOLDER);
        } catch (FileAlreadyExistsException e) {
            Files.setPosixFilePermissions(folder, OWNER_ONLY_FOLDER.value());
        }
    }

    /** Writes a new file that only its owner can read, at no moment otherwise; an old one is deleted first. */
    static void writePrivate(Path file, String text) throws IOException {
        Files.deleteIfExists(file);
        Files.createFile(file, OWNER_ONLY_FILE);
        try (var channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)));
            channel.force(true);
        }
    }

    /** The finished file or folder gets its name, and a crash of the machine does not take it back. */
    static void moveIntoPlace(Path finished, Path target) throws IOException {
        Files.move(finished, target, StandardCopyOption.ATOMIC_MOVE);
        try (var parent = FileChannel.open(target.getParent(), StandardOpenOption.READ)) {
            parent.force(true);
        }
    }

    static void deleteRecursively(Path folder) throws IOException {
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        List<Path> deepestFirst;
        try (var paths = Files.walk(folder)) {
            deepestFirst = paths.sorted(Comparator.reverseOrder()).toList();
        }
        for (var path : deepestFirst) {
            Files.delete(path);
        }
    }
}
