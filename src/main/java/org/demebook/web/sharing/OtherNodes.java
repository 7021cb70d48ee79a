package org.demebook.web.sharing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.consent.ReadyChoice;
import org.demebook.consent.SharingView;
import org.demebook.consent.SharingView.NodeChoice;
import org.demebook.federation.Federations;
import org.demebook.keeper.Standing;
import org.demebook.protocol.Charter;
import org.demebook.protocol.Participant;

/** The other nodes that a population is shared with, as a keeper chooses for them. */
@ApplicationScoped
class OtherNodes {
    @Inject
    Federations federations;

    /** One line a node, in the order of their codes; none where the population is not shared. */
    List<NodeChoice> of(Standing by, SharingView sharing) {
        Map<String, NodeChoice> chosen =
                sharing.nodes().stream().collect(Collectors.toMap(NodeChoice::node, Function.identity()));
        return codes(by)
                .map(code -> chosen.getOrDefault(code, new NodeChoice(code, ReadyChoice.PRIVATE)))
                .toList();
    }

    private Stream<String> codes(Standing by) {
        if (!federations.isShared(by.populationId())) {
            return Stream.empty();
        }
        var me = federations.nodeId();
        return federations.reading(by.populationId(), Participant::charter).stream()
                .flatMap(charter -> charter.seats().stream())
                .filter(seat -> !seat.node().equals(me))
                .map(Charter.Seat::code)
                .sorted();
    }

    /** Codes of nodes that have not confirmed yet that they erased something that was withdrawn. */
    List<String> silent(Standing by) {
        if (!federations.isShared(by.populationId())) {
            return List.of();
        }
        return federations.reading(by.populationId(), part -> {
            var nodes = part.missingReceipts().values().stream()
                    .flatMap(silent -> silent.stream())
                    .collect(Collectors.toSet());
            return part.charter().map(Charter::seats).orElse(List.of()).stream()
                    .filter(seat -> nodes.contains(seat.node()))
                    .map(Charter.Seat::code)
                    .sorted()
                    .toList();
        });
    }
}
