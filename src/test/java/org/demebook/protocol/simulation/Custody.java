package org.demebook.protocol.simulation;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Statement;

/**
 * Who holds which animal by what is on all disks together, told as simply as the protocol has it in words, without its code: a node
 * holds what it entered, took or adopted and has not released.
 */
final class Custody {
    private final World world;
    private final Map<AnimalId, Set<String>> holders = new TreeMap<>();
    private final Map<AnimalId, Set<UUID>> onTheWay = new TreeMap<>();
    private final Map<UUID, AnimalId> animals = new HashMap<>();
    private final Set<UUID> taken = new HashSet<>();

    private Custody(World world) {
        this.world = world;
    }

    static Custody of(World world) {
        var custody = new Custody(world);
        for (var node : world.nodes) {
            custody.readTransfers(node.id);
        }
        for (var node : world.nodes) {
            custody.readHoldings(node.id);
        }
        for (var node : world.nodes) {
            custody.endWhatTheGoneHeld(node.id);
        }
        return custody;
    }

    private void readTransfers(String node) {
        for (var kept : world.chronicle.journal(node)) {
            var says = world.says(kept).orElse(null);
            if (says instanceof Statement.Offered offered) {
                animals.put(offered.transfer(), offered.animal());
            } else if (says instanceof Statement.Taken it) {
                taken.add(it.transfer());
                animals.put(it.transfer(), offerOf(it).animal());
            }
        }
    }

    private void readHoldings(String node) {
        for (var kept : world.chronicle.journal(node)) {
            var says = world.says(kept).orElse(null);
            if (says instanceof Statement.AnimalEntered entered) {
                holders(entered.animal()).add(node);
            } else if (says instanceof Statement.Released released) {
                var animal = animals.get(released.transfer());
                holders(animal).remove(node);
                if (!taken.contains(released.transfer())) {
                    onTheWay.computeIfAbsent(animal, any -> new HashSet<>()).add(released.transfer());
                }
            } else if (says instanceof Statement.Taken it) {
                holders(animals.get(it.transfer())).add(node);
            } else if (says instanceof Statement.Adopted adopted) {
                holders(adopted.animal()).add(node);
            }
        }
    }

    /** By an adoption, or by a release that only who took it knows. */
    private void endWhatTheGoneHeld(String node) {
        for (var kept : world.chronicle.journal(node)) {
            var says = world.says(kept).orElse(null);
            if (says instanceof Statement.Adopted adopted) {
                holders(adopted.animal()).remove(adopted.from());
                onTheWay.getOrDefault(adopted.animal(), new HashSet<>())
                        .removeIf(transfer -> adopted.stint().equals(Optional.of(transfer)));
            } else if (says instanceof Statement.Taken it) {
                var release = released(it);
                if (release.seq() > world.chronicle.journal(release.node()).size()) {
                    holders(animals.get(it.transfer())).remove(release.node());
                }
            }
        }
    }

    private Entry released(Statement.Taken taken) {
        return world.entry(taken.release().entry());
    }

    private Statement.Offered offerOf(Statement.Taken taken) {
        var release = (Statement.Released) released(taken).says();
        var acceptance =
                (Statement.Accepted) world.entry(release.acceptance().entry()).says();
        return (Statement.Offered) world.entry(acceptance.offer().entry()).says();
    }

    private Set<String> holders(AnimalId animal) {
        return holders.computeIfAbsent(animal, any -> new TreeSet<>());
    }

    Map<AnimalId, Set<String>> holders() {
        return holders;
    }

    Set<UUID> onTheWay(AnimalId animal) {
        return onTheWay.getOrDefault(animal, Set.of());
    }
}
