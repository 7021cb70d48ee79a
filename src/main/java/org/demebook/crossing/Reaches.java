package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Map;
import org.demebook.crossing.CrossingView.Reach;
import org.demebook.federation.Federations;
import org.demebook.peering.Peers;

/** How far other nodes are known to have followed. */
@ApplicationScoped
class Reaches {
    @Inject
    Federations federations;

    @Inject
    Peers peers;

    /** A node that cosigned this one's journal up to an entry has that entry. */
    Reach of(Crossing crossing) {
        var cosigned = federations
                .reading(crossing.populationId, participant -> participant.witnesses())
                .getOrDefault(federations.nodeId(), Map.of())
                .getOrDefault(crossing.node, 0L);
        return new Reach(
                crossing.toldSeq != null && cosigned >= crossing.toldSeq,
                peers.lastContactAt(crossing.node).orElse(null));
    }
}
