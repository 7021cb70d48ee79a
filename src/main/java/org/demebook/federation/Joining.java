package org.demebook.federation;

import static org.demebook.problem.ProblemType.ALREADY_SHARED;
import static org.demebook.problem.ProblemType.CODE_TAKEN;
import static org.demebook.problem.ProblemType.NO_SEAT;
import static org.demebook.problem.ProblemType.NO_SUCH_PEER;
import static org.demebook.problem.ProblemType.PEER_NOT_REACHED;
import static org.demebook.problem.ProblemType.SEAT_TAKEN;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.journal.Journal;
import org.demebook.keeper.Asker;
import org.demebook.peering.Node;
import org.demebook.peering.Peer;
import org.demebook.peering.PeerTrouble;
import org.demebook.peering.Peers;
import org.demebook.problem.Refusal;
import org.demebook.protocol.Charter;
import org.demebook.protocol.FeedError;
import org.demebook.protocol.Follower;
import org.demebook.protocol.Membership;
import org.demebook.protocol.MemoryDisk;
import org.demebook.protocol.Participant;
import org.demebook.registry.NewPopulation;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;

/** How this node joins a population that another founded and in which it has a seat. */
@ApplicationScoped
class Joining {
    @Inject
    Node node;

    @Inject
    Peers peers;

    @Inject
    Parts parts;

    @Inject
    Fetching fetching;

    @Inject
    CharterForm form;

    @Inject
    Journal journal;

    @Inject
    Populations populations;

    @Inject
    Sharing sharing;

    /**
     * Asks the founding node for its journal and reads the charter, every entry checked. Not for a transaction: another server is
     * called.
     *
     * @throws Refusal unless there is a charter that gives this node a seat with its own code
     */
    NewPopulation look(UUID population, String founder) {
        var self = node.identity();
        var peer = peers.find(founder)
                .filter(Peer::isActive)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_PEER,
                        "This node does not talk with a node \"%s\". Let it in first (POST /api/v1/peers)."
                                .formatted(founder)));
        var charter = charter(population, peer, new Membership(population, founder, self::keys, self::signingKey));
        var seat = charter.seat(self.nodeId()).orElseThrow(() -> noSeat(peer));
        if (!seat.code().equals(journal.nodeCode())) {
            throw new Refusal(
                    SEAT_TAKEN,
                    "The charter gives this node the code %s, and it issues studbook numbers with %s. Ask the administrator of %s to give it the seat %s."
                            .formatted(seat.code(), journal.nodeCode(), peer.name(), journal.nodeCode()));
        }
        return form.population(charter)
                .orElseThrow(() -> new Refusal(
                        PEER_NOT_REACHED,
                        "The charter that %s gives describes no population that could be founded here."
                                .formatted(peer.name())));
    }

    private Charter charter(UUID population, Peer peer, Membership membership) {
        var reader = new Participant(membership, new MemoryDisk(), parts.surroundings(), Follower.NOBODY);
        var work = new Fetching.Work() {
            @Override
            public <T> T with(Function<Participant, T> reading) {
                return reading.apply(reader);
            }
        };
        try {
            fetching.fetch(work, population, peer, peer.nodeId(), new Link(SyncLoop.LARGEST_PAGE, System.nanoTime()));
        } catch (PeerTrouble trouble) {
            if (Fetching.reason(trouble)
                    .filter(FeedError.Reason.NOT_A_MEMBER::equals)
                    .isPresent()) {
                throw noSeat(peer);
            }
            throw new Refusal(PEER_NOT_REACHED, String.valueOf(trouble.getMessage()));
        }
        return reader.charter().orElseThrow(() -> noSeat(peer));
    }

    private Refusal noSeat(Peer peer) {
        return new Refusal(
                NO_SEAT,
                "%s knows no such population, or gives this node no seat in it. Ask its administrator to give the node %s the seat %s (POST …/federation/seats)."
                        .formatted(peer.name(), node.identity().fingerprint(), journal.nodeCode()));
    }

    /** Founds the population here, with the id and the code that it has there. The asker coordinates its keepers here. */
    @Transactional
    PopulationView join(Asker by, UUID population, String founder, NewPopulation described) {
        if (FederatedPopulation.of(population).isPresent()) {
            throw new Refusal(ALREADY_SHARED, "This node takes part in that population already.");
        }
        if (populations.withCode(described.code()).isPresent()) {
            throw new Refusal(
                    CODE_TAKEN,
                    "This node has a population %s of its own. Two populations with one code would give out the same studbook numbers: found one of them anew under another code, or keep them apart."
                            .formatted(described.code()));
        }
        var founded = populations.found(by, population, described);
        sharing.follow(by, population, founder);
        return founded;
    }
}
