package org.demebook.federation;

import static org.demebook.problem.ProblemType.ALREADY_SHARED;
import static org.demebook.problem.ProblemType.NODE_FENCED;
import static org.demebook.problem.ProblemType.NOT_SAID;
import static org.demebook.problem.ProblemType.NO_SUCH_PEER;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.SEAT_TAKEN;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.federation.FederationFacts.NodeFollowedAgain;
import org.demebook.federation.FederationFacts.NodeSetAside;
import org.demebook.federation.FederationFacts.PopulationShared;
import org.demebook.journal.Journal;
import org.demebook.keeper.Asker;
import org.demebook.peering.Node;
import org.demebook.peering.NodeIdentity;
import org.demebook.peering.Peers;
import org.demebook.problem.Refusal;
import org.demebook.protocol.Charter;
import org.demebook.protocol.Charter.Seat;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Refused;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement.CharterStated;
import org.demebook.registry.Populations;

/** What administrators decide about a population that is shared. */
@ApplicationScoped
public class Sharing {
    @Inject
    Federations federations;

    @Inject
    Populations populations;

    @Inject
    Journal journal;

    @Inject
    Node node;

    @Inject
    Peers peers;

    @Inject
    CharterForm form;

    /** Refuses with NO_SUCH_POPULATION. */
    public UUID population(String code) {
        return populations
                .withCode(code)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_POPULATION, "This node has no population with the code %s.".formatted(code)));
    }

    /** Begins to share a population that was founded here: this node's charter holds, with a seat of its own so far. */
    @Transactional
    public void share(Asker by, UUID population) {
        journal.open(population);
        var identity = node.identity();
        if (FederatedPopulation.of(population).isPresent()) {
            throw new Refusal(ALREADY_SHARED, "The population is shared already (GET …/federation).");
        }
        var described = populations.get(population);
        journal.record(population, by.keeperId(), new PopulationShared(identity.nodeId()));
        var charter = new Charter(
                described.code(), form.describe(described), List.of(new Seat(identity.nodeId(), journal.nodeCode())));
        saying(population, part -> {
            part.open(node.name(), Optional.of(charter));
            return true;
        });
    }

    /** The same of one that was founded elsewhere, after it was founded here with the same id. In a transaction. */
    void follow(Asker by, UUID population, String founder) {
        journal.open(population);
        journal.record(population, by.keeperId(), new PopulationShared(founder));
        federations.with(population, Participant::others);
    }

    /** Gives a peer a seat, or another code. By the founding node. */
    @Transactional
    public void seat(UUID population, String nodeId, String code) {
        var peer = peers.find(nodeId)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_PEER,
                        "No node with the id \"%s\" was let in here. Let it in first (POST /api/v1/peers)."
                                .formatted(nodeId)));
        saying(population, part -> {
            var charter = part.charter().orElseThrow(() -> notTheFounder(population));
            charter.seats().stream()
                    .filter(seat -> seat.code().equals(code) && !seat.node().equals(nodeId))
                    .findFirst()
                    .ifPresent(seat -> {
                        throw new Refusal(
                                SEAT_TAKEN,
                                "Node %s issues studbook numbers with the code %s; give %s another one."
                                        .formatted(NodeIdentity.fingerprint(seat.node()), code, peer.name()));
                    });
            var seats = new ArrayList<>(charter.seats());
            seats.removeIf(seat -> seat.node().equals(nodeId));
            seats.add(new Seat(nodeId, code));
            seats.sort(Comparator.comparing(Seat::node));
            var next = new Charter(charter.code(), charter.description(), seats);
            return next.equals(charter) ? List.of() : part.write(List.of(Saying.toAll(new CharterStated(next))));
        });
    }

    /** The node is neither followed nor waited for in this population, or is again. Does nothing where it is so already. */
    @Transactional
    public void setAside(Asker by, UUID population, String nodeId, boolean aside) {
        journal.open(population);
        federations.with(population, part -> {
            requireOther(part, nodeId);
            if (AsideNode.isOne(population, nodeId) != aside) {
                journal.record(
                        population, by.keeperId(), aside ? new NodeSetAside(nodeId) : new NodeFollowedAgain(nodeId));
            }
            return true;
        });
    }

    void requireOther(Participant part, String nodeId) {
        if (nodeId.equals(federations.nodeId())
                || part.charter().flatMap(charter -> charter.seat(nodeId)).isEmpty()) {
            throw new Refusal(
                    NO_SUCH_PEER,
                    "No other node with the id \"%s\" has a seat in this population (GET …/federation lists them)."
                            .formatted(nodeId));
        }
    }

    /** Works, and says in a problem's words why this node may not say so now. */
    <T> T saying(UUID population, Function<Participant, T> work) {
        try {
            return federations.with(population, work);
        } catch (Refused refused) {
            throw refusal(refused);
        }
    }

    static Refusal refusal(Refused refused) {
        if (refused.reason() == Refused.Reason.FENCED) {
            return new Refusal(
                    NODE_FENCED,
                    "%s Nothing is lost: try again once they can be reached, or set aside who is gone (POST …/federation/nodes/{node}/setting-aside)."
                            .formatted(refused.getMessage()));
        }
        return new Refusal(NOT_SAID, String.valueOf(refused.getMessage()));
    }

    private static Refusal notTheFounder(UUID population) {
        return new Refusal(NOT_SAID, "The charter of %s is not known here yet.".formatted(population));
    }
}
