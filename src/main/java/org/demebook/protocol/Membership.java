package org.demebook.protocol;

import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.signing.KeyChain;
import org.demebook.signing.SigningKey;

/**
 * Who takes part, and in what.
 *
 * @param founder id of the node that founded the population, whose charter holds
 * @param keys the node's chain as it is now; its last key is that of {@code key}
 */
public record Membership(UUID population, String founder, Supplier<KeyChain> keys, Supplier<SigningKey> key) {
    public String node() {
        return keys.get().nodeId();
    }
}
