package org.demebook.protocol.simulation;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.Comparator;
import java.util.Optional;
import org.demebook.protocol.Charter;

/** A population comes to be: each node opens its journal, and each hears of the charter before anything breaks. */
final class Founding {
    private final World world;

    Founding(World world) {
        this.world = world;
    }

    void found() {
        var seats = world.nodes.stream()
                .map(node -> new Charter.Seat(node.id, "N" + node.number))
                .sorted(Comparator.comparing(Charter.Seat::node))
                .toList();
        var charter = new Charter("MC", JsonNodeFactory.instance.objectNode().put("locality", "Marrowfin Cay"), seats);
        for (var node : world.nodes) {
            world.step(() -> {
                node.start();
                node.participant().open(node.name, node == world.founder() ? Optional.of(charter) : Optional.empty());
                world.rules.acknowledged(node, 0);
                world.story.tell(node + " opens its journal");
            });
        }
    }
}
