package org.demebook.peering;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Comparator;
import java.util.Set;
import org.jboss.logging.Logger;

/**
 * Files that only their owner can read, at no moment otherwise, and that are there as a whole or not at all, whenever the machine
 * stops. On a file system without the rights of POSIX nothing is known of who reads; that is told once.
 */
final class PrivateFiles {
    private static final Logger LOG = Logger.getLogger(PrivateFiles.class);
    private static final Set<PosixFilePermission> OWNERS_FILE = PosixFilePermissions.fromString("rw-------");
    private static final Set<PosixFilePermission> OWNERS_FOLDER = PosixFilePermissions.fromString("rwx------");
    private static final FileAttribute<?>[] NONE = {};

    private final boolean posix;
    private final Runnable beforeEachStep;

    /**
     * @param near a path on the file system in question; a folder that exists
     * @param beforeEachStep run before anything on the disk changes; for tests that stop there
     */
    PrivateFiles(Path near, Runnable beforeEachStep) {
        posix = Files.getFileAttributeView(near, PosixFileAttributeView.class) != null;
        this.beforeEachStep = beforeEachStep;
        if (!posix) {
            LOG.warnf(
                    "%s is on a file system that does not say who may read a file. See to it that only this server's user can: "
                            + "this node's keys are there.",
                    near);
        }
    }

    /** A new folder of a name of its own beside that one. */
    Path newFolderBeside(Path folder) throws IOException {
        beforeEachStep.run();
        return Files.createTempDirectory(
                folder.toAbsolutePath().getParent(),
                folder.getFileName() + ".new-",
                posix ? attributes(OWNERS_FOLDER) : NONE);
    }

    /** Writes a file anew; it is on the disk when this returns. */
    void write(Path file, byte[] content) throws IOException {
        beforeEachStep.run();
        Files.deleteIfExists(file);
        Files.createFile(file, posix ? attributes(OWNERS_FILE) : NONE);
        try (var channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            var bytes = ByteBuffer.wrap(content);
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
    }

    /** Gives a finished file or folder its name, in the place of an old file; a crash does not take it back. */
    void moveIntoPlace(Path finished, Path target) throws IOException {
        beforeEachStep.run();
        Files.move(finished, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        syncFolder(target.toAbsolutePath().getParent());
    }

    void syncFolder(Path folder) throws IOException {
        if (posix) { // elsewhere a folder cannot be opened
            try (var channel = FileChannel.open(folder, StandardOpenOption.READ)) {
                channel.force(true);
            }
        }
    }

    /** @throws UnusableIdentity if group or others have any right to the folder or to what is in it */
    void requirePrivate(Path folder) throws IOException {
        if (!posix) {
            return;
        }
        try (var files = Files.walk(folder)) {
            for (var file : files.toList()) {
                var rights = Files.getPosixFilePermissions(file, LinkOption.NOFOLLOW_LINKS);
                var owners = Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS) ? OWNERS_FOLDER : OWNERS_FILE;
                if (!OWNERS_FOLDER.containsAll(rights)) {
                    throw new UnusableIdentity(
                            ("%s has the rights %s: others than its owner can get at this node's keys, and may have done so. "
                                            + "Take them away (chmod -R go= %s) and, if somebody else could have read it, change the key: deploy/federation-keys.md. It should be %s.")
                                    .formatted(
                                            file,
                                            PosixFilePermissions.toString(rights),
                                            folder,
                                            PosixFilePermissions.toString(owners)));
                }
            }
        }
    }

    /** Does nothing where there is no such file. */
    void delete(Path file) throws IOException {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            beforeEachStep.run();
            Files.delete(file);
        }
    }

    static void deleteFolder(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    private static FileAttribute<?>[] attributes(Set<PosixFilePermission> rights) {
        return new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(rights)};
    }
}
