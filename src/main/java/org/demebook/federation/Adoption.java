package org.demebook.federation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.federation.Views.AdoptionView;
import org.demebook.federation.Views.GoneView;
import org.demebook.federation.Views.Heir;
import org.demebook.keeper.Asker;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Charter.Seat;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Transfer;
import org.demebook.protocol.Whereabouts;

/** What is done when a node is gone for good: its animals are held by the one heir that more than half of the nodes that are left have named. */
@ApplicationScoped
public class Adoption {
    @Inject
    Federations federations;

    @Inject
    Sharing sharing;

    /** This node's word that another is gone, once and for one heir; it is set aside here from now on. */
    @Transactional
    public GoneView nameHeir(Asker by, UUID population, String gone, String heir) {
        sharing.setAside(by, population, gone, true);
        return sharing.saying(population, part -> {
            part.giveUp(gone, heir);
            return view(part, gone);
        });
    }

    /** What is said of nodes that somebody calls gone, by their ids. */
    static SortedMap<String, GoneView> gone(Participant part) {
        var views = new TreeMap<String, GoneView>();
        part.charter().ifPresent(charter -> charter.seats().stream()
                .map(Seat::node)
                .filter(node -> !part.heirs(node).isEmpty())
                .forEach(node -> views.put(node, view(part, node))));
        return views;
    }

    private static GoneView view(Participant part, String gone) {
        var namedBy = part.heirs(gone).entrySet().stream()
                .collect(Collectors.groupingBy(
                        Map.Entry::getValue, TreeMap::new, Collectors.mapping(Map.Entry::getKey, Collectors.toList())));
        return new GoneView(
                gone,
                namedBy.entrySet().stream()
                        .map(named -> new Heir(named.getKey(), named.getValue()))
                        .toList(),
                part.heirsNeeded());
    }

    /** All animals that the gone node holds as far as is known here, and those on their way to it, are held here from now on. */
    @Transactional
    public AdoptionView adopt(Asker by, UUID population, String gone) {
        sharing.setAside(by, population, gone, true);
        return sharing.saying(population, part -> {
            if (!part.heirs(gone).containsKey(federations.nodeId())) {
                part.giveUp(gone, federations.nodeId());
            }
            var proof = part.heirTo(gone);
            var sayings = new ArrayList<Saying>();
            left(part, gone)
                    .forEach((animal, stint) -> sayings.add(
                            Saying.toAll(new Statement.Adopted(animal, gone, stint, proof.charter(), proof.words()))));
            part.write(sayings);
            return new AdoptionView(
                    gone,
                    sayings.stream()
                            .map(saying ->
                                    ((Statement.Adopted) saying.says()).animal().toString())
                            .toList());
        });
    }

    /** What the gone node holds or was being sent, each with the transfer by which it came there; none where it was registered there. */
    private static Map<AnimalId, Optional<UUID>> left(Participant part, String gone) {
        var left = new TreeMap<AnimalId, Optional<UUID>>();
        for (var animal : part.animals()) {
            var place = part.whereabouts(animal);
            if (place instanceof Whereabouts.Held held && held.node().equals(gone)) {
                left.put(animal, broughtBy(part, animal, gone));
            } else if (place instanceof Whereabouts.InTransit transit
                    && transit.to().equals(gone)) {
                left.put(animal, Optional.of(transit.transfer()));
            }
        }
        return left;
    }

    private static Optional<UUID> broughtBy(Participant part, AnimalId animal, String gone) {
        return part.transfers().values().stream()
                .filter(transfer -> transfer.animal().equals(animal)
                        && transfer.to().equals(gone)
                        && transfer.state() == Transfer.State.TAKEN)
                .max(Comparator.comparing(Transfer::offeredAt))
                .map(Transfer::id);
    }
}
