package org.demebook.peering;

import static org.demebook.problem.ProblemType.FEDERATION_OFF;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.nio.file.Path;
import java.util.Optional;
import org.demebook.problem.Refusal;
import org.demebook.signing.KeyChain;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** This node among others: whether it takes part, and who it is then. */
@ApplicationScoped
public class Node {
    @ConfigProperty(name = "demebook.federation")
    boolean on;

    @ConfigProperty(name = "demebook.federation.name")
    String name;

    @ConfigProperty(name = "demebook.state")
    Path state;

    @ConfigProperty(name = "demebook.federation.recovery-key")
    Optional<Path> recoveryKey;

    @Inject
    Event<KeysChanged> keysChanged;

    private volatile @Nullable NodeIdentity identity;

    /** Whether this node talks with others. */
    public boolean isFederated() {
        return on;
    }

    /** What this node calls itself to others. */
    public String name() {
        return name;
    }

    /**
     * Who this node is; made when first asked for.
     *
     * @throws Refusal FEDERATION_OFF
     */
    public NodeIdentity identity() {
        if (!on) {
            throw new Refusal(
                    FEDERATION_OFF,
                    "This node talks with no other. Start it with -Ddemebook.federation=on; deploy/federation-keys.md says what that makes.");
        }
        var known = identity;
        return known == null ? open() : known;
    }

    private synchronized NodeIdentity open() {
        var known = identity;
        if (known == null) {
            known = NodeIdentity.in(folder(state), recoveryKey.orElse(null));
            identity = known;
        }
        return known;
    }

    /** Where a node with that state folder has its keys. */
    public static Path folder(Path state) {
        return state.resolve("federation");
    }

    /** The next key is in use when this returns, and everybody was told who observes {@link KeysChanged}. */
    KeyChain rotateKey() {
        var chain = identity().rotate();
        keysChanged.fire(new KeysChanged(chain));
        return chain;
    }
}
