package org.demebook.protocol.simulation;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Whereabouts;

/** Where animals are. */
final class CustodyRules {
    private final World world;
    private final Map<SimNode, Set<AnimalId>> held = new HashMap<>();

    CustodyRules(World world) {
        this.world = world;
    }

    /** What the node itself says that it holds. */
    void look(SimNode node) {
        var its = new HashSet<AnimalId>();
        for (var animal : node.participant().animals()) {
            if (node.participant().whereabouts(animal) instanceof Whereabouts.Held it
                    && it.node().equals(node.id)) {
                its.add(animal);
            }
        }
        held.put(node, its);
    }

    void i1_at_most_one_says_that_it_holds_an_animal() {
        var holders = new HashMap<AnimalId, SimNode>();
        for (var node : world.nodes) {
            if (node.writes()) {
                for (var animal : held.getOrDefault(node, Set.of())) {
                    var other = holders.put(animal, node);
                    if (other != null) {
                        throw world.story.broken(
                                "I1", "both %s and %s hold %s".formatted(other, node, world.story.name('a', animal)));
                    }
                }
            }
        }
    }

    void i2_every_animal_is_held_once_or_on_its_way() {
        var custody = Custody.of(world);
        custody.holders().forEach((animal, holders) -> {
            var onTheWay = custody.onTheWay(animal);
            if (holders.size() + onTheWay.size() != 1) {
                throw world.story.broken(
                        "I2",
                        "%s is held by %s and on its way by %s"
                                .formatted(
                                        world.story.name('a', animal),
                                        holders.stream().map(world.story::node).toList(),
                                        onTheWay.stream()
                                                .map(it -> world.story.name('t', it))
                                                .toList()));
            }
        });
    }

    /** But for those with a node that is gone for good: a gone receiver never takes, a gone giver never says that it withdraws. */
    void i12_every_transfer_has_ended() {
        for (var node : world.nodes) {
            if (node.isGone()) {
                continue;
            }
            for (var transfer : node.participant().transfers().values()) {
                boolean withGone = world.node(transfer.from()).isGone()
                        || world.node(transfer.to()).isGone();
                if (!transfer.state().isEnded() && !withGone) {
                    throw world.story.broken(
                            "I12",
                            "%s sees %s of %s to %s as %s"
                                    .formatted(
                                            node,
                                            world.story.name('t', transfer.id()),
                                            world.story.node(transfer.from()),
                                            world.story.node(transfer.to()),
                                            transfer.state()));
                }
            }
            requireSeenAsItIs(node);
        }
    }

    private void requireSeenAsItIs(SimNode node) {
        for (var animal : node.participant().animals()) {
            var holders = Custody.of(world).holders().getOrDefault(animal, Set.of());
            var seen = node.participant().whereabouts(animal);
            boolean alike = seen instanceof Whereabouts.Held it ? holders.contains(it.node()) : holders.isEmpty();
            if (!alike) {
                throw world.story.broken(
                        "I2",
                        "%s sees %s as %s, its holders are %s"
                                .formatted(node, world.story.name('a', animal), seen, holders));
            }
        }
        world.readBy(node).stream()
                .filter(entry -> entry.says() instanceof Statement.Offered)
                .map(entry -> ((Statement.Offered) entry.says()).transfer())
                .filter(transfer -> !node.participant().transfers().containsKey(transfer))
                .findFirst()
                .ifPresent(transfer -> {
                    throw world.story.broken(
                            "I12",
                            "%s knows nothing of %s, whose offer it holds"
                                    .formatted(node, world.story.name('t', transfer)));
                });
    }
}
