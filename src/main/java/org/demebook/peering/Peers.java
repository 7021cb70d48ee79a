package org.demebook.peering;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.demebook.signing.KeyChain;

/** The nodes that an administrator admitted. */
@ApplicationScoped
public class Peers implements PeerBook {
    @Inject
    Clock clock;

    /** In the order of their names. */
    @Transactional
    public List<Peer> all() {
        return PeerRow.inOrder().stream().map(PeerRow::peer).toList();
    }

    /** Those with whom this node talks. */
    @Transactional
    public List<Peer> active() {
        return all().stream().filter(Peer::isActive).toList();
    }

    @Override
    @Transactional
    public Optional<Peer> find(String nodeId) {
        return PeerRow.<PeerRow>findByIdOptional(nodeId).map(PeerRow::peer);
    }

    @Override
    @Transactional
    public boolean learn(String nodeId, KeyChain keys) {
        return PeerRow.locked(nodeId).map(row -> row.learn(keys)).orElse(false);
    }

    @Override
    @Transactional
    public void heardOf(String nodeId) {
        PeerRow.contact(nodeId, Instant.now(clock));
    }

    /**
     * It was asked, and something came in between: shown to administrators until it is heard of again.
     *
     * @param trouble a sentence; nothing that the peer wrote
     */
    @Transactional
    public void troubled(String nodeId, String trouble) {
        PeerRow.trouble(nodeId, trouble);
    }
}
