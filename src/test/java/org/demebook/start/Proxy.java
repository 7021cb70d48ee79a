package org.demebook.start;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * What may come between two nodes: passes bytes on, and by chance, in the order of a seed, late, twice, not all of them, or not at all.
 * TLS goes through it, so whatever it changes the nodes have to notice.
 */
final class Proxy implements AutoCloseable {
    /**
     * How often in a thousand chunks of at most 8 KiB; on a calm proxy never.
     *
     * @param delayMillis the longest wait before a chunk is passed on
     */
    record Weather(int cuts, int duplicates, int truncations, int delays, int delayMillis) {
        static final Weather CALM = new Weather(0, 0, 0, 0, 0);
        static final Weather STORM = new Weather(40, 20, 20, 200, 150);
    }

    private static final int CHUNK = 8 * 1024;

    final AtomicInteger cuts = new AtomicInteger();
    final AtomicInteger duplicates = new AtomicInteger();
    final AtomicInteger truncations = new AtomicInteger();
    final AtomicInteger delays = new AtomicInteger();

    private final ServerSocket listening;
    private final int target;
    private final SplittableRandom chance;
    private final ExecutorService pumps = Executors.newCachedThreadPool(work -> {
        var thread = new Thread(work, "proxy");
        thread.setDaemon(true);
        return thread;
    });
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private volatile Weather weather = Weather.CALM;

    /** @param target a port on loopback; nobody has to listen there yet */
    Proxy(int target, long seed) throws IOException {
        this.target = target;
        this.chance = new SplittableRandom(seed);
        this.listening = new ServerSocket(0, 50, InetAddress.getByName("127.0.0.1"));
        pumps.submit(this::accept);
    }

    int port() {
        return listening.getLocalPort();
    }

    void is(Weather next) {
        weather = next;
    }

    private void accept() {
        while (!listening.isClosed()) {
            try {
                var client = listening.accept();
                pumps.submit(() -> connect(client));
            } catch (IOException closed) {
                return;
            }
        }
    }

    private void connect(Socket client) {
        try {
            var server = new Socket(InetAddress.getByName("127.0.0.1"), target);
            open.add(client);
            open.add(server);
            pumps.submit(() -> pump(client, server));
            pumps.submit(() -> pump(server, client));
        } catch (IOException away) {
            end(client);
        }
    }

    private void pump(Socket from, Socket to) {
        var bytes = new byte[CHUNK];
        try {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            int read;
            while ((read = in.read(bytes)) > 0) {
                if (!pass(bytes, read, out)) {
                    break;
                }
            }
        } catch (IOException | InterruptedException gone) {
            // both ends are told below
        } finally {
            end(from);
            end(to);
        }
    }

    /** @return whether the connection goes on */
    private boolean pass(byte[] bytes, int length, OutputStream out) throws IOException, InterruptedException {
        var now = weather;
        int drawn;
        int wait;
        int part;
        synchronized (chance) {
            drawn = chance.nextInt(1_000);
            wait = chance.nextInt(1_000) < now.delays ? 1 + chance.nextInt(Math.max(1, now.delayMillis)) : 0;
            part = chance.nextInt(length);
        }
        if (wait > 0) {
            delays.incrementAndGet();
            Thread.sleep(wait);
        }
        if (drawn < now.cuts) {
            cuts.incrementAndGet();
            return false;
        }
        if (drawn < now.cuts + now.truncations) {
            truncations.incrementAndGet();
            out.write(bytes, 0, part);
            out.flush();
            return false;
        }
        out.write(bytes, 0, length);
        if (drawn < now.cuts + now.truncations + now.duplicates) {
            duplicates.incrementAndGet();
            out.write(bytes, 0, length);
        }
        out.flush();
        return true;
    }

    private void end(Socket socket) {
        open.remove(socket);
        try {
            socket.close();
        } catch (IOException e) {
            // it is closed
        }
    }

    @Override
    public void close() throws IOException {
        listening.close();
        open.forEach(this::end);
        pumps.shutdownNow();
    }
}
