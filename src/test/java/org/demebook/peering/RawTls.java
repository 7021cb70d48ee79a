package org.demebook.peering;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.security.KeyStore;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLServerSocket;
import javax.net.ssl.SSLSocket;

/** A server of bytes on loopback: answers every connection with the same ones, and counts the connections. */
final class RawTls implements AutoCloseable {
    /** What it says once the head of a request was read. */
    interface Script {
        void play(Socket socket) throws Exception;
    }

    final AtomicInteger connections = new AtomicInteger();
    private final ServerSocket socket;

    private RawTls(ServerSocket socket, Script script) {
        this.socket = socket;
        var threads = Executors.newCachedThreadPool(work -> {
            var thread = new Thread(work, "raw");
            thread.setDaemon(true);
            return thread;
        });
        threads.execute(() -> {
            while (!socket.isClosed()) {
                try {
                    var accepted = socket.accept();
                    connections.incrementAndGet();
                    threads.execute(() -> serve(accepted, script));
                } catch (IOException closed) {
                    return;
                }
            }
        });
    }

    static RawTls tls(TlsKey key, Script script) throws Exception {
        return tls(key, "TLSv1.3", script);
    }

    static RawTls tls(TlsKey key, String version, Script script) throws Exception {
        var store = KeyStore.getInstance("PKCS12");
        store.load(new ByteArrayInputStream(key.store()), TlsKey.PASSWORD.toCharArray());
        var keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        keys.init(store, TlsKey.PASSWORD.toCharArray());
        var context = SSLContext.getInstance("TLS");
        context.init(keys.getKeyManagers(), null, null);
        var socket = (SSLServerSocket)
                context.getServerSocketFactory().createServerSocket(0, 10, InetAddress.getByName("127.0.0.1"));
        socket.setEnabledProtocols(new String[] {version});
        return new RawTls(socket, script);
    }

    static RawTls plain(Script script) throws IOException {
        return new RawTls(new ServerSocket(0, 10, InetAddress.getByName("127.0.0.1")), script);
    }

    private static void serve(Socket accepted, Script script) {
        try (accepted) {
            if (accepted instanceof SSLSocket tls) {
                tls.startHandshake();
            }
            var head = new StringBuilder();
            while (head.indexOf("\r\n\r\n") < 0) {
                int read = accepted.getInputStream().read();
                if (read < 0) {
                    return;
                }
                head.append((char) read);
            }
            script.play(accepted);
        } catch (Exception broken) {
            // the other side went away, which is what is looked at here
        }
    }

    static Script says(String text) {
        return socket -> {
            socket.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().flush();
        };
    }

    static Script answers(String body) {
        return says("HTTP/1.1 200 OK\r\nContent-Length: %d\r\n\r\n%s".formatted(body.length(), body));
    }

    int port() {
        return socket.getLocalPort();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
