package org.demebook.crossing;

import static org.demebook.problem.ProblemType.ANIMAL_ELSEWHERE;
import static org.demebook.problem.ProblemType.CROSSING_ENDED;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NODE_FENCED;
import static org.demebook.problem.ProblemType.NO_SUCH_NODE;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.demebook.federation.Federations;
import org.demebook.keeper.Standing;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Refused;

/** What keepers do, said to the other nodes in the caller's transaction; what may not be said is refused in words for a keeper. */
@ApplicationScoped
class Spoken {
    @Inject
    Federations federations;

    /** That the offer of this thread is being made, so that it is not taken for one from before a restore. */
    private final ThreadLocal<Boolean> offering = ThreadLocal.withInitial(() -> false);

    /** @param toldSeq where the record stands in this node's federated journal */
    record OfferId(UUID transfer, AnimalId animal, long toldSeq) {}

    boolean isOffering() {
        return offering.get();
    }

    /** @param record what the receiver is handed, of the animal as it is called between nodes */
    OfferId offer(Standing by, UUID animalId, String node, Instant expiresAt, Function<AnimalId, ObjectNode> record) {
        offering.set(true);
        try {
            return saying(() -> {
                var federatedId = federations.name(by.populationId(), by.keeperId(), animalId);
                var handed = record.apply(federatedId);
                return federations.with(by.populationId(), participant -> {
                    var transfer = participant.offer(federatedId, node, expiresAt, handed);
                    return new OfferId(
                            transfer, federatedId, participant.heads().get(federations.nodeId()));
                });
            });
        } finally {
            offering.remove();
        }
    }

    void withdraw(UUID populationId, UUID transfer) {
        say(populationId, participant -> participant.withdraw(transfer));
    }

    void accept(UUID populationId, UUID transfer) {
        say(populationId, participant -> participant.accept(transfer));
    }

    void reject(UUID populationId, UUID transfer) {
        say(populationId, participant -> participant.reject(transfer));
    }

    private void say(UUID populationId, Consumer<Participant> words) {
        saying(() -> federations.with(populationId, participant -> {
            words.accept(participant);
            return true;
        }));
    }

    private static <T> T saying(Supplier<T> words) {
        try {
            return words.get();
        } catch (Refused refused) {
            throw new Refusal(type(refused.reason()), sentence(refused));
        }
    }

    private static ProblemType type(Refused.Reason reason) {
        return switch (reason) {
            case FENCED, NOT_OPEN -> NODE_FENCED;
            case NOT_SEATED -> NO_SUCH_NODE;
            case NOT_ITS_HOLDER, FOREIGN_AUTHORITY, NOT_THE_HEIR -> ANIMAL_ELSEWHERE;
            case NO_SUCH_TRANSFER, TOO_LATE, REPLAYED, FALSE_PROOF -> CROSSING_ENDED;
            case MALFORMED -> INVALID_VALUES;
        };
    }

    private static String sentence(Refused refused) {
        return switch (refused.reason()) {
            case FENCED, NOT_OPEN ->
                "This node was started anew and first hears from the other nodes how far it had come, so that nothing is said twice. Nothing is lost; try again in a few minutes, or ask the administrator which node is still awaited.";
            case NOT_SEATED -> "That node takes part in this population no more; ask the administrator.";
            case NOT_ITS_HOLDER, FOREIGN_AUTHORITY, NOT_THE_HEIR ->
                "By the journals of the nodes this node does not hold the animal now; ask the administrator to look at it.";
            case NO_SUCH_TRANSFER, TOO_LATE, REPLAYED, FALSE_PROOF ->
                "The crossing has gone on meanwhile; read it again to see where it stands.";
            case MALFORMED -> "That is more than can go with an animal; shorten the notes.";
        };
    }
}
