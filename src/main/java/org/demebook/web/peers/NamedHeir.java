package org.demebook.web.peers;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.demebook.federation.Views.FederationView;
import org.demebook.federation.Views.SharingNode;

/**
 * One heir of one node that is gone, as nodes named it.
 *
 * @param gone its code
 * @param goneNode its id
 * @param heir the heir's code
 * @param named by how many nodes
 * @param here whether this node is the heir and may adopt now
 */
public record NamedHeir(String gone, String goneNode, String heir, int named, int needed, boolean here) {
    static List<NamedHeir> of(FederationView shared) {
        Map<String, SharingNode> seats =
                shared.nodes().stream().collect(Collectors.toMap(SharingNode::node, seat -> seat));
        var named = new ArrayList<NamedHeir>();
        for (var seat : shared.nodes()) {
            var gone = seat.gone();
            if (gone == null) {
                continue;
            }
            for (var heir : gone.heirs()) {
                var its = seats.get(heir.node());
                named.add(new NamedHeir(
                        seat.code(),
                        seat.node(),
                        its == null ? heir.node() : its.code(),
                        heir.namedBy().size(),
                        gone.needed(),
                        its != null && its.thisNode() && heir.namedBy().size() >= gone.needed()));
            }
        }
        return named;
    }
}
