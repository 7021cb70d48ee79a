package org.demebook.peering;

import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NO_SUCH_PEER;
import static org.demebook.problem.ProblemType.PEER_IS_THIS_NODE;
import static org.demebook.problem.ProblemType.PEER_KEYS_DIFFER;
import static org.demebook.problem.ProblemType.PEER_NOT_REACHED;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.demebook.keeper.Asker;
import org.demebook.peering.Views.NewPeer;
import org.demebook.peering.Views.PeerView;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;

/** How administrators let other nodes in, and set them aside. */
@ApplicationScoped
class Admission {
    private final FirstContact firstContact = new FirstContact(Limits.CONNECTING, Limits.ANSWERING);

    @Inject
    Node node;

    @Inject
    Clock clock;

    /** What the administrator is shown when a node is let in, and whether it was known before. */
    record Admitted(PeerView peer, boolean isNew) {}

    /**
     * Looks who answers at the address. Not for a transaction: another server is called.
     *
     * @throws Refusal unless it is the node that was described, and not this one
     */
    NodeDocument look(NewPeer described) {
        var address = address(described.address());
        var typed = withoutSpaces(described.fingerprint());
        if (same(typed, node.identity().nodeId())) {
            throw new Refusal(
                    PEER_IS_THIS_NODE,
                    "%s is the fingerprint of this node; enter the one that the other administrator reads to you."
                            .formatted(node.identity().fingerprint()));
        }
        NodeDocument found;
        try {
            found = firstContact.fetch(address);
        } catch (PeerTrouble trouble) {
            throw new Refusal(PEER_NOT_REACHED, "%s: %s".formatted(address, trouble.getMessage()));
        }
        var nodeId = found.keys().nodeId();
        if (!same(typed, nodeId)) {
            throw new Refusal(
                    PEER_KEYS_DIFFER,
                    "You were told %s, at %s answers %s. Ask the other administrator again, by telephone or face to face, for fingerprint and address; do not take over what the network says."
                            .formatted(NodeIdentity.fingerprint(typed), address, NodeIdentity.fingerprint(nodeId)));
        }
        var typedPin = described.tlsPin();
        if (typedPin != null && !same(withoutSpaces(typedPin), found.tlsPin())) {
            throw new Refusal(
                    PEER_KEYS_DIFFER,
                    "You were told the TLS pin %s, the node at %s vouches for %s. Ask the other administrator which is right."
                            .formatted(withoutSpaces(typedPin), address, found.tlsPin()));
        }
        return found;
    }

    /** Lets the node in, or takes its new address, TLS key and name, if it is known; a node that was set aside stays so. */
    @Transactional
    Admitted admit(Asker by, NewPeer described, NodeDocument found) {
        var known = PeerRow.locked(found.keys().nodeId());
        var row = known.orElseGet(() -> new PeerRow(found.keys(), Instant.now(clock), by.keeperId()));
        if (known.isPresent() && !row.learn(found.keys())) {
            throw new Refusal(
                    PEER_KEYS_DIFFER,
                    "The keys that %s shows do not follow from those known here since %s. It was restored from an old backup, or somebody else has its key: ask its administrator."
                            .formatted(row.name, row.admittedAt));
        }
        row.name = described.name().strip();
        row.address = address(described.address()).toString();
        row.tlsPin = found.tlsPin();
        row.lastContactAt = Instant.now(clock);
        row.lastTrouble = null;
        row.persist();
        return new Admitted(view(row), known.isEmpty());
    }

    @Transactional
    List<PeerView> all() {
        return PeerRow.inOrder().stream().map(Admission::view).toList();
    }

    /** Does nothing where it is so already. @throws Refusal NO_SUCH_PEER */
    @Transactional
    PeerView become(String nodeId, Peer.State state) {
        var row = PeerRow.locked(nodeId)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_PEER,
                        "No node with the id \"%s\" was let in here; GET /api/v1/peers lists them.".formatted(nodeId)));
        row.become(state);
        return view(row);
    }

    private static PeerView view(PeerRow row) {
        var peer = row.peer();
        return new PeerView(
                peer.nodeId(),
                NodeIdentity.fingerprint(peer.nodeId()),
                peer.name(),
                peer.address().toString(),
                peer.tlsPin(),
                peer.keys().keys().size(),
                row.state,
                row.admittedAt,
                row.lastContactAt,
                row.lastTrouble);
    }

    private static URI address(String typed) {
        try {
            var address = new URI(typed.strip()).parseServerAuthority();
            var path = address.getRawPath();
            if ("https".equals(address.getScheme())
                    && address.getHost() != null
                    && address.getRawUserInfo() == null
                    && address.getRawQuery() == null
                    && address.getRawFragment() == null
                    && (path.isEmpty() || path.equals("/"))
                    && address.getPort() <= 65_535
                    && address.getPort() != 0) {
                return new URI("https://" + address.getRawAuthority());
            }
        } catch (URISyntaxException e) {
            // told below
        }
        throw new Refusal(
                INVALID_VALUES,
                "address is not of the form https://host:port.",
                List.of(Finding.error("address", typed, "is not of the form https://host:port")));
    }

    private static String withoutSpaces(String typed) {
        return typed.replaceAll("[\\s\\u00a0]+", "");
    }

    private static boolean same(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }
}
