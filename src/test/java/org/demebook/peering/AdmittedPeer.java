package org.demebook.peering;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.demebook.Backstage;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.demebook.signing.SigningKey;

/** Another node that was let in here, and does not exist elsewhere. */
public final class AdmittedPeer {
    private AdmittedPeer() {}

    public static String nodeId() {
        var keys = KeyChain.of(SigningKey.generate(), SigningKey.generate().verifyingKey());
        Backstage.change(
                "insert into demebook.peer (node_id, name, address, tls_pin, keys, admitted_at, admitted_by, state)"
                        + " values (?, 'Upland', 'https://127.0.0.1:1', ?, ?, now(), ?, 'active')",
                keys.nodeId(),
                keys.recovery(),
                new String(CanonicalJson.write(keys.toJson()), StandardCharsets.UTF_8),
                UUID.randomUUID());
        return keys.nodeId();
    }
}
