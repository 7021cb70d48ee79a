package org.demebook.peering;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import org.demebook.rest.ShownTo;
import org.demebook.rest.ShownTo.Whom;
import org.jspecify.annotations.Nullable;

/** What administrators see and send. */
final class Views {
    private Views() {}

    /**
     * Who this node is to others; to be passed on to their administrators, on another way than the network.
     *
     * @param nodeId thumbprint of the node's first key (RFC 7638), for ever
     * @param fingerprint the same in groups of four
     * @param tlsPin SHA-256 of the TLS key, base64url
     * @param address where other nodes reach this one
     * @param keyNumber of the key in use; the first is 1
     */
    @ShownTo(Whom.ADMINISTRATORS)
    record NodeIdentityView(String nodeId, String fingerprint, String tlsPin, String address, int keyNumber) {}

    /**
     * Another node.
     *
     * @param keyNumber of the last of its keys that is known here
     * @param state {@code active}: one talks with it; {@code set-aside}: it is asked nothing and answered nothing
     * @param lastContactAt when it asked last, or answered; null for never
     * @param lastTrouble what came in between since; null for nothing
     */
    @ShownTo(Whom.ADMINISTRATORS)
    record PeerView(
            String nodeId,
            String fingerprint,
            String name,
            String address,
            String tlsPin,
            int keyNumber,
            String state,
            Instant admittedAt,
            @Nullable Instant lastContactAt,
            @Nullable String lastTrouble) {}

    /**
     * A node to talk with from now on; one that is known already gets the new address, TLS key and name.
     *
     * @param address {@code https://host:port}; the one address that is ever called for it
     * @param fingerprint as its administrator read it to you; spaces do not matter, capitals do
     * @param tlsPin if you were told that too, it is compared as well
     * @param name what you call it
     */
    record NewPeer(
            @NotNull @Size(min = 9, max = 300) String address,
            @NotNull @Size(min = 43, max = 100) String fingerprint,
            @Nullable @Size(max = 100) String tlsPin,
            @NotNull @Size(min = 1, max = 100) String name) {}
}
