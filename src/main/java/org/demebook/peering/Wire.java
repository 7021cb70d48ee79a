package org.demebook.peering;

import static org.demebook.peering.PeerTrouble.Kind.NOT_UNDERSTOOD;
import static org.demebook.peering.PeerTrouble.Kind.NO_TLS;
import static org.demebook.peering.PeerTrouble.Kind.REDIRECTED;
import static org.demebook.peering.PeerTrouble.Kind.TIMED_OUT;
import static org.demebook.peering.PeerTrouble.Kind.UNREACHABLE;
import static org.demebook.peering.PeerTrouble.Kind.WRONG_TLS_KEY;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpClient.Redirect;
import java.net.http.HttpClient.Version;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpTimeoutException;
import java.time.Duration;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLParameters;

/** One request over TLS 1.3 and its answer, or the trouble by its name. */
final class Wire {
    private static final String[] TLS = {"TLSv1.3"};

    private Wire() {}

    static HttpClient client(SSLContext trust, Duration connecting) {
        var parameters = new SSLParameters();
        parameters.setProtocols(TLS);
        return HttpClient.newBuilder()
                .sslContext(trust)
                .sslParameters(parameters)
                .connectTimeout(connecting)
                .followRedirects(Redirect.NEVER)
                .proxy(HttpClient.Builder.NO_PROXY)
                .version(Version.HTTP_1_1)
                .build();
    }

    /**
     * @param answering from the request to the last byte of the answer
     * @throws PeerTrouble if there is no answer, or one that is redirected or encoded
     */
    static HttpResponse<byte[]> send(HttpClient client, HttpRequest request, int mostBytes, Duration answering) {
        var sent = client.sendAsync(request, LimitedBody.of(mostBytes, Limits.MOST_ERROR_BYTES));
        HttpResponse<byte[]> answer;
        try {
            answer = sent.get(answering.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            sent.cancel(true);
            throw new PeerTrouble(
                    TIMED_OUT, "It did not answer within %d seconds.".formatted(answering.toSeconds()), e);
        } catch (InterruptedException e) {
            sent.cancel(true);
            Thread.currentThread().interrupt();
            throw new PeerTrouble(UNREACHABLE, "This node was stopped before the answer came.", e);
        } catch (ExecutionException e) {
            throw trouble(e.getCause());
        }
        if (answer.statusCode() / 100 == 3) {
            throw new PeerTrouble(REDIRECTED, "It answered with another address, which is not followed.");
        }
        if (answer.headers().firstValue("Content-Encoding").isPresent()) {
            throw new PeerTrouble(NOT_UNDERSTOOD, "Its answer is compressed, which nobody asked for.");
        }
        return answer;
    }

    private static PeerTrouble trouble(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof PeerTrouble known) {
                return known;
            }
            if (cause instanceof PinTrust.WrongPin wrong) {
                return new PeerTrouble(
                        WRONG_TLS_KEY,
                        "Something else answers at its address: %s. If its administrator changed the TLS key, enter the address anew."
                                .formatted(wrong.getMessage()),
                        failure);
            }
        }
        if (failure instanceof HttpTimeoutException) {
            return new PeerTrouble(TIMED_OUT, "No connection came about in time.", failure);
        }
        if (failure instanceof SSLException) {
            return new PeerTrouble(NO_TLS, "It speaks no TLS 1.3 there.", failure);
        }
        if (failure instanceof IOException) {
            return new PeerTrouble(
                    UNREACHABLE,
                    "It cannot be reached: nothing listens there, the name is not known, or the connection broke.",
                    failure);
        }
        throw new IllegalStateException(failure);
    }
}
