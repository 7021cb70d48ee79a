package org.demebook.protocol.simulation;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.demebook.signing.KeyChain;
import org.demebook.signing.SigningKey;

/** The keys of the simulated nodes: the same in every world, since making one costs more than most of a story. */
final class Keys {
    private static final int RECOVERY = 100;
    private static final Map<Integer, SigningKey> KEYS = new ConcurrentHashMap<>();
    private static final Map<Integer, KeyChain> CHAINS = new ConcurrentHashMap<>();

    /** Chains that were read from a page in any world: there are only these few. */
    static final Map<ObjectNode, KeyChain> VERIFIED = new ConcurrentHashMap<>();

    private Keys() {}

    /** @param generation how often the node changed its key before */
    static SigningKey key(int node, int generation) {
        return KEYS.computeIfAbsent(node << 8 | generation, any -> {
            byte[] seed = new byte[32];
            Arrays.fill(seed, (byte) (node + 1));
            seed[31] = (byte) generation;
            return SigningKey.ofSeed(seed);
        });
    }

    static KeyChain chain(int node, int generation) {
        var known = CHAINS.get(node << 8 | generation);
        if (known != null) {
            return known;
        }
        var recovery = key(node, RECOVERY).verifyingKey();
        var chain = generation == 0
                ? KeyChain.of(key(node, 0), recovery)
                : chain(node, generation - 1).rotated(key(node, generation - 1), key(node, generation), recovery);
        CHAINS.put(node << 8 | generation, chain);
        return chain;
    }
}
