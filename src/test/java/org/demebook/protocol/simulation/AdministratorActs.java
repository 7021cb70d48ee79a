package org.demebook.protocol.simulation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Transfer;
import org.demebook.protocol.Whereabouts;
import org.jspecify.annotations.Nullable;

/** New keys, and what has to be done when a node is gone for good. */
final class AdministratorActs {
    private static final int MOST_KEYS = 4;

    private final World world;
    private final Acts acts;
    private final Dice dice;
    /** On whom the administrators agreed: nothing in the protocol keeps two nodes from adopting one animal at the same time. */
    private @Nullable SimNode heir;

    AdministratorActs(World world, Acts acts, Dice dice) {
        this.world = world;
        this.acts = acts;
        this.dice = dice;
    }

    /** The journal says so with the next entry, whichever that is. */
    boolean changeKeys(SimNode node) {
        if (node.generation() + 1 == MOST_KEYS || dice.happens(0.7)) {
            return false;
        }
        node.changeKey();
        world.story.tell("%s has key number %d".formatted(node, node.generation() + 1));
        return true;
    }

    boolean adopt(SimNode node) {
        var gone = world.nodes.stream().filter(SimNode::isGone).findFirst();
        if (gone.isEmpty()) {
            return false;
        }
        if (heir != null && heir != node) {
            return false;
        }
        node.setAside(gone.get().id);
        var orphan = dice.anyOf(node.participant().animals().stream()
                .filter(animal -> node.participant().whereabouts(animal) instanceof Whereabouts.Held it
                        && it.node().equals(gone.get().id))
                .toList());
        var charter = node.participant().charterEntry();
        if (orphan.isEmpty() || charter.isEmpty()) {
            return false;
        }
        var says = new Statement.Adopted(
                orphan.get(),
                gone.get().id,
                stint(node, orphan.get(), gone.get()),
                charter.get(),
                endorsements(gone.get()));
        var what = "adopts %s of %s, endorsed by %d"
                .formatted(
                        world.story.name('a', orphan.get()),
                        gone.get(),
                        says.endorsements().size());
        heir = node; // agreed on before, whatever becomes of this attempt
        return acts.write(node, what, List.of(Saying.toAll(says)));
    }

    /** By everybody who can be asked; a telephone does for this. */
    private List<Statement.Endorsement> endorsements(SimNode gone) {
        var endorsements = new ArrayList<Statement.Endorsement>();
        for (var node : world.nodes) {
            if (node.writes()) {
                node.setAside(gone.id);
                endorsements.add(node.participant().endorse(gone.id));
            }
        }
        endorsements.sort(Comparator.comparing(endorsement -> endorsement.keys().nodeId()));
        return endorsements;
    }

    /** The transfer by which the animal had come to the node that is gone. */
    private Optional<UUID> stint(SimNode node, AnimalId animal, SimNode gone) {
        return world.readBy(node).stream()
                .filter(entry -> entry.node().equals(gone.id))
                .filter(entry -> entry.says() instanceof Statement.Taken)
                .map(entry -> ((Statement.Taken) entry.says()).transfer())
                .filter(transfer -> Optional.ofNullable(
                                node.participant().transfers().get(transfer))
                        .map(Transfer::animal)
                        .filter(animal::equals)
                        .isPresent())
                .reduce((earlier, later) -> later);
    }
}
