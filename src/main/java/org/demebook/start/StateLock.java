package org.demebook.start;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** One server per state folder. The operating system drops the lock when the process dies, however it dies. */
final class StateLock {

    // Closing any channel of a file drops all locks this process has on it (POSIX), so a second start in the same
    // process must be refused before it opens the file.
    private static final Set<Path> HELD_BY_THIS_PROCESS = ConcurrentHashMap.newKeySet();

    private final Path stateFolder;
    private final FileChannel channel;

    private StateLock(Path stateFolder, FileChannel channel) {
        this.stateFolder = stateFolder;
        this.channel = channel;
    }

    /**
     * @param stateFolder its real path
     * @throws CannotStart if another server holds the lock; the message names its process
     */
    static StateLock take(Path stateFolder) throws IOException {
        if (!HELD_BY_THIS_PROCESS.add(stateFolder)) {
            throw inUse(stateFolder, "this very process");
        }
        try {
            return new StateLock(stateFolder, lockedChannel(stateFolder));
        } catch (IOException | RuntimeException e) {
            HELD_BY_THIS_PROCESS.remove(stateFolder);
            throw e;
        }
    }

    private static FileChannel lockedChannel(Path stateFolder) throws IOException {
        var file = stateFolder.resolve("demebook.lock");
        var channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            if (channel.tryLock() == null) {
                throw inUse(stateFolder, "process " + Files.readString(file).strip());
            }
            channel.truncate(0);
            channel.write(ByteBuffer.wrap((ProcessHandle.current().pid() + "\n").getBytes()));
            return channel;
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    private static CannotStart inUse(Path stateFolder, String holder) {
        return new CannotStart("Another server (%s) uses the folder %s. Stop it, or give this one a folder of its own."
                .formatted(holder, stateFolder));
    }

    void release() {
        try {
            channel.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            HELD_BY_THIS_PROCESS.remove(stateFolder);
        }
    }
}
