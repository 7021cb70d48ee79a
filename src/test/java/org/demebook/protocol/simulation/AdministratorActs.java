package org.demebook.protocol.simulation;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Refused;
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
    /** On whom the administrators agreed: whoever was first to think of it. */
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

    /** Names an heir, and adopts once enough others are known to have named the same; one animal at a time. */
    boolean adopt(SimNode node) {
        var gone = world.nodes.stream().filter(SimNode::isGone).findFirst();
        if (gone.isEmpty()) {
            return false;
        }
        node.setAside(gone.get().id);
        if (!named(node, gone.get())) {
            return agreeOnHeir(node, gone.get());
        }
        var orphan = dice.anyOf(node.participant().animals().stream()
                .filter(animal -> node.participant().whereabouts(animal) instanceof Whereabouts.Held it
                        && it.node().equals(gone.get().id))
                .toList());
        return orphan.isPresent() && adopt(node, gone.get(), orphan.get());
    }

    private static boolean named(SimNode node, SimNode gone) {
        return node.participant().heirs(gone.id).containsKey(node.id);
    }

    /** By telephone: everybody who can write now names the heir. Some misunderstand, so that more than one is named. */
    private boolean agreeOnHeir(SimNode caller, SimNode gone) {
        if (heir == null) {
            heir = caller;
        }
        boolean done = false;
        for (var node : world.nodes) {
            if (node.writes() && !named(node, gone)) {
                done |= nameHeir(node, gone);
            }
        }
        return done;
    }

    private boolean nameHeir(SimNode node, SimNode gone) {
        var named = dice.happens(0.85)
                ? heir
                : dice.oneOf(world.nodes.stream().filter(other -> other != gone).toList());
        if (named != heir) {
            world.story.count(Happening.ANOTHER_HEIR_NAMED);
        }
        node.setAside(gone.id);
        return acts.does(node, "names %s the heir of %s".formatted(named, gone), () -> node.participant()
                .giveUp(gone.id, named.id));
    }

    private boolean adopt(SimNode node, SimNode gone, AnimalId orphan) {
        Participant.Proof proof;
        try {
            proof = node.participant().heirTo(gone.id);
        } catch (Refused refused) {
            return false; // too few so far, or another one was named
        }
        var says = new Statement.Adopted(orphan, gone.id, stint(node, orphan, gone), proof.charter(), proof.words());
        var what = "adopts %s of %s, named by %d"
                .formatted(world.story.name('a', orphan), gone, proof.words().size());
        return acts.write(node, what, List.of(Saying.toAll(says)));
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
