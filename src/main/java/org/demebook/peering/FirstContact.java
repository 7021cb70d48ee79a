package org.demebook.peering;

import static org.demebook.peering.PeerTrouble.Kind.NOT_UNDERSTOOD;
import static org.demebook.peering.PeerTrouble.Kind.WRONG_TLS_KEY;

import java.net.URI;
import java.net.http.HttpRequest;
import java.security.GeneralSecurityException;
import java.security.cert.X509Certificate;
import java.time.Duration;
import javax.net.ssl.SSLPeerUnverifiedException;
import javax.net.ssl.SSLSession;
import org.demebook.signing.Malformed;

/**
 * Fetches the node document of a node that is not known yet, from the address that an administrator typed. The TLS key of that very
 * connection has to be the one for which the node key vouches: otherwise somebody stands in between and passes on what is public.
 */
final class FirstContact {
    private final Duration connecting;
    private final Duration answering;

    FirstContact(Duration connecting, Duration answering) {
        this.connecting = connecting;
        this.answering = answering;
    }

    /** @throws PeerTrouble if there is no document, or it is not of whoever answered */
    NodeDocument fetch(URI address) {
        var request = HttpRequest.newBuilder(PinnedClient.at(address, Routes.NODE))
                .timeout(answering)
                .build();
        var client = Wire.client(PinTrust.any(), connecting);
        var answer = Wire.send(client, request, Limits.MOST_KEY_DOCUMENT_BYTES, answering);
        if (answer.statusCode() != 200) {
            throw new PeerTrouble(
                    NOT_UNDERSTOOD,
                    "It answered %d: there is no node at that address. Is it the address and port that the other node shows its administrator?"
                            .formatted(answer.statusCode()));
        }
        NodeDocument document;
        try {
            document = NodeDocument.parse(answer.body());
        } catch (Malformed e) {
            throw new PeerTrouble(NOT_UNDERSTOOD, "What it says of itself cannot be believed: " + e.getMessage() + ".");
        }
        var seen = pin(answer.sslSession().orElseThrow());
        if (!seen.equals(document.tlsPin())) {
            throw new PeerTrouble(
                    WRONG_TLS_KEY,
                    "The TLS key of the connection is %s, the node there vouches for %s: somebody stands in between, or its certificate was put there by another program."
                            .formatted(seen, document.tlsPin()));
        }
        return document;
    }

    private static String pin(SSLSession session) {
        try {
            return TlsKey.pin((X509Certificate) session.getPeerCertificates()[0]);
        } catch (SSLPeerUnverifiedException | GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }
}
