package org.demebook.peering;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;
import org.demebook.signing.VerifyingKey;
import org.jspecify.annotations.Nullable;

/**
 * Who this node is: its keys, from a folder that only its owner can read.
 *
 * <p>Needs no container, so that one process can be several nodes. Safe for use by several threads; one process at a time may
 * use a folder.
 */
public final class NodeIdentity {
    private final KeyFolder folder;
    private final TlsKey tls;
    private volatile Keys keys;

    /** What changes together. */
    private record Keys(KeyChain chain, KeyFolder.Secret secret) {}

    private NodeIdentity(KeyFolder folder, KeyFolder.Opened opened) {
        this.folder = folder;
        this.tls = opened.tls();
        this.keys = new Keys(opened.chain(), opened.secret());
    }

    /**
     * The node of that folder; makes a new one where there is no folder.
     *
     * @throws UnusableIdentity if others may read the folder, or something in it is missing or does not fit
     */
    public static NodeIdentity in(Path folder) {
        return in(folder, null);
    }

    /**
     * The same; where the key in use is lost, a next one is made with the recovery key.
     *
     * @param recoveryKey file of the recovery key that was committed to last; nothing happens while the key in use is there
     */
    public static NodeIdentity in(Path folder, @Nullable Path recoveryKey) {
        var keys = new KeyFolder(folder);
        return new NodeIdentity(keys, keys.open(recoveryKey));
    }

    /** Thumbprint of the node's first key: 43 characters, for ever. */
    public String nodeId() {
        return keys.chain.nodeId();
    }

    public KeyChain keys() {
        return keys.chain;
    }

    /** The key in use. For what speaks for the node alone: this room, and the one that writes its journals. */
    public SigningKey signingKey() {
        return keys.secret.key();
    }

    /** The node's id in groups of four, for reading aloud. */
    public String fingerprint() {
        return fingerprint(nodeId());
    }

    /** The same of any node. */
    public static String fingerprint(String nodeId) {
        return nodeId.replaceAll("(.{4})(?=.)", "$1 ");
    }

    /** SHA-256 of the public key (SubjectPublicKeyInfo, DER) of the node's TLS certificate, base64url without padding. */
    public String tlsPin() {
        return tls.pin();
    }

    /**
     * The node signs with a new key from now on. It is on disk, chain and key together, when this returns.
     *
     * @throws UnusableIdentity if it cannot be written; then the key in use stays
     */
    public synchronized KeyChain rotate() {
        var now = keys;
        var next = SigningKey.generate();
        var recovery = now.secret.recovery();
        var chain = now.chain.rotated(now.secret.key(), next, recovery);
        var secret = new KeyFolder.Secret(next, recovery);
        folder.replace(chain, secret, null);
        keys = new Keys(chain, secret);
        return chain;
    }

    TlsKey tls() {
        return tls;
    }

    /** What the node tells anybody of itself, signed by the key in use. */
    byte[] document(String name) {
        var now = keys;
        return NodeDocument.write(now.chain, name, tls.pin(), now.secret.key());
    }

    /** Signs with the key in use. */
    Signed sign(String type, ObjectNode payload) {
        return Signed.sign(type, payload, keys.secret.key());
    }

    /** Says who it is, and nothing secret. */
    @Override
    public String toString() {
        return "node " + nodeId();
    }

    /** The recovery key now committed to, by its public half. */
    VerifyingKey recovery() {
        return keys.secret.recovery();
    }
}
