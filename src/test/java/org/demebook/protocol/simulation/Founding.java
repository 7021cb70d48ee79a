package org.demebook.protocol.simulation;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.Comparator;
import java.util.Optional;
import org.demebook.protocol.Charter;

/** A population comes to be: each node opens its journal after the founder said that it knows none of it, and most of them hear of the charter. */
final class Founding {
    private final World world;
    private final Dice dice;

    Founding(World world, Dice dice) {
        this.world = world;
        this.dice = dice;
    }

    void found() {
        var seats = world.nodes.stream()
                .map(node -> new Charter.Seat(node.id, "N" + node.number))
                .sorted(Comparator.comparing(Charter.Seat::node))
                .toList();
        var charter = new Charter("MC", JsonNodeFactory.instance.objectNode().put("locality", "Marrowfin Cay"), seats);
        world.network.calm();
        world.step(() -> world.nodes.forEach(SimNode::start));
        world.step(() -> open(world.founder(), Optional.of(charter)));
        for (var node : world.nodes) {
            if (node != world.founder()) { // a node joins by reading the charter
                world.step(() -> world.network.ask(node, world.founder(), world.founder().id));
            }
        }
        for (var node : world.nodes) {
            if (node != world.founder()) {
                world.step(() -> {
                    for (var awaited : node.participant().awaited()) {
                        world.network.ask(node, world.node(awaited), node.id);
                    }
                    open(node, Optional.empty());
                });
            }
        }
        world.network.rage();
    }

    private void open(SimNode node, Optional<Charter> charter) {
        node.participant().open(node.name, charter);
        world.rules.acknowledged(node, 0);
        world.story.tell(node + " opens its journal");
    }
}
