package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.federation.Federations;
import org.demebook.keeper.Leaving;
import org.demebook.keeper.Standing;

/** Nobody leaves while an animal of theirs is between two nodes, or offered to them by another. */
@ApplicationScoped
class CrossingsOfLeavers implements Leaving {
    /** Stands for no collection in a list that would be empty. */
    private static final UUID NONE = new UUID(0, 0);

    @Inject
    Federations federations;

    @Override
    public List<String> inTheWay(Standing by, Set<UUID> alone) {
        var inTheWay = new ArrayList<String>();
        for (var crossing : Crossing.<Crossing>list(
                "populationId = ?1 and state in ?2 and (given and collectionId in ?3 or not given and keeperId = ?4)"
                        + " order by id",
                by.populationId(),
                Crossing.OPEN,
                alone.isEmpty() ? Set.of(NONE) : alone,
                by.keeperId())) {
            var node = federations.codeOfNode(by.populationId(), crossing.node).orElse(crossing.node);
            inTheWay.add(
                    crossing.state != CrossingState.OFFERED
                            ? "An animal is between this node and the node %s: wait until it arrived (…/crossings/%s)."
                                    .formatted(node, crossing.id)
                            : crossing.given
                                    ? "An animal is offered to a keeper on the node %s: withdraw that first, or wait for the answer (POST …/crossings/%s/withdrawal)."
                                            .formatted(node, crossing.id)
                                    : "An animal is offered to you from the node %s: accept or refuse it first (POST …/crossings/%s/refusal)."
                                            .formatted(node, crossing.id));
        }
        if (given(by.populationId(), by.keeperId()).stream().anyMatch(crossing -> isTold(crossing))
                && federations.reading(by.populationId(), participant -> participant.fenced())) {
            inTheWay.add(
                    "What you wrote to keepers on other nodes is to be erased there, and this node waits for the other nodes just now: try again in a few minutes.");
        }
        return inTheWay;
    }

    private static List<Crossing> given(UUID populationId, UUID keeperId) {
        return Crossing.list("populationId = ?1 and given and keeperId = ?2 order by id", populationId, keeperId);
    }

    private boolean isTold(Crossing crossing) {
        return federations.reading(
                crossing.populationId,
                participant -> participant.record(crossing.id).isPresent());
    }

    /** What they sent along is erased where it was sent to. */
    @Override
    public void cleared(UUID populationId, UUID keeperId, Set<UUID> alone) {
        var given = given(populationId, keeperId);
        if (!given.isEmpty()) {
            federations.with(populationId, participant -> {
                given.forEach(crossing -> Giving.withdrawRecord(crossing, participant));
                return true;
            });
        }
    }
}
