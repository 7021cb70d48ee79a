package org.demebook.protocol.simulation;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Predicate;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Transfer;
import org.demebook.protocol.Whereabouts;

/** Giving and taking, in every order that keepers think of. */
final class HandOverActs {
    private final World world;
    private final Acts acts;
    private final Dice dice;

    HandOverActs(World world, Acts acts, Dice dice) {
        this.world = world;
        this.acts = acts;
        this.dice = dice;
    }

    boolean offer(SimNode node) {
        var held = node.participant().animals().stream()
                .filter(animal -> node.participant().whereabouts(animal) instanceof Whereabouts.Held it
                        && it.node().equals(node.id)
                        && (!it.offered() || dice.happens(0.05)))
                .toList();
        var animal = dice.anyOf(held);
        var to = dice.anyOf(node.participant().others());
        if (animal.isEmpty() || to.isEmpty()) {
            return false;
        }
        var lasts = world.conditions.expiring()
                ? Duration.ofMinutes(dice.between(30, 36 * 60L))
                : Duration.ofDays(1_000 + dice.below(100));
        var record = JsonNodeFactory.instance.objectNode().put("name", world.story.name('a', animal.get()));
        var what = "offers %s to %s for %s"
                .formatted(world.story.name('a', animal.get()), world.story.node(to.get()), lasts);
        return acts.does(node, what, () -> {
            var transfer = node.participant()
                    .offer(animal.get(), to.get(), node.clock.now().plus(lasts), record);
            world.rules.requireSaid(
                    node,
                    says -> says instanceof Statement.Offered it
                            && it.transfer().equals(transfer));
            world.story.tell("  as " + world.story.name('t', transfer));
        });
    }

    boolean withdraw(SimNode node) {
        var chosen = any(
                node,
                it -> it.from().equals(node.id)
                        && (!it.state().isEnded() || dice.happens(0.05))
                        && (it.state() != Transfer.State.OFFERED || dice.happens(0.25)));
        return chosen.isPresent()
                && end(node, "withdraws ", chosen.get(), () -> node.participant()
                        .withdraw(chosen.get().id()));
    }

    boolean accept(SimNode node) {
        var chosen = any(
                node, it -> it.to().equals(node.id) && (it.state() == Transfer.State.OFFERED || dice.happens(0.05)));
        return chosen.isPresent()
                && end(node, "accepts ", chosen.get(), () -> node.participant()
                        .accept(chosen.get().id()));
    }

    boolean reject(SimNode node) {
        var chosen = any(
                node,
                it -> it.to().equals(node.id)
                        && (it.state() == Transfer.State.OFFERED && dice.happens(0.5) || dice.happens(0.05)));
        return chosen.isPresent()
                && end(node, "rejects ", chosen.get(), () -> node.participant()
                        .reject(chosen.get().id()));
    }

    private Optional<Transfer> any(SimNode node, Predicate<Transfer> which) {
        return dice.anyOf(node.participant().transfers().values().stream()
                .sorted(java.util.Comparator.comparing(Transfer::id))
                .filter(which)
                .toList());
    }

    private boolean end(SimNode node, String what, Transfer transfer, Runnable act) {
        boolean done =
                acts.does(node, what + world.story.name('t', transfer.id()) + " (" + transfer.state() + ")", act);
        if (done) {
            acts.perhapsAgain(node, act);
        } else if (transfer.state() == Transfer.State.RELEASED) {
            world.story.count(Happening.WITHDRAWN_TOO_LATE);
        }
        return true;
    }
}
