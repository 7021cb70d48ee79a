package org.demebook.protocol.simulation;

import java.util.List;
import java.util.function.Predicate;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Refused;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;

/** What keepers and administrators do at a node, at random. */
final class Acts {
    private final World world;
    private final Dice dice;
    private final HandOverActs handOver;
    private final AdministratorActs administration;
    private final List<Predicate<SimNode>> acts;

    Acts(World world, Dice dice) {
        this.world = world;
        this.dice = dice;
        var animals = new AnimalActs(world, this, dice);
        handOver = new HandOverActs(world, this, dice);
        administration = new AdministratorActs(world, this, dice);
        acts = List.of(
                animals::enter,
                animals::giveBirth,
                animals::giveBirth,
                animals::correct,
                animals::tellHolding,
                animals::withdrawTelling,
                animals::claim,
                animals::confirm,
                animals::confirm,
                animals::confirm,
                animals::reverse,
                animals::reverse,
                handOver::offer,
                handOver::offer,
                handOver::offer,
                handOver::withdraw,
                administration::changeKeys);
    }

    /** One act; of those that chance suggests, the first for which there is an occasion. */
    void act(SimNode node) {
        if (!node.runs()) {
            return;
        }
        if (node.participant().fenced()) {
            actWhileFenced(node);
            return;
        }
        if (dice.happens(0.7) && administration.adopt(node) || dice.happens(0.6) && handOver.goOn(node)) {
            return;
        }
        for (int tries = 0; tries < 12; tries++) {
            if (dice.oneOf(acts).test(node)) {
                return;
            }
        }
    }

    private void actWhileFenced(SimNode node) {
        var says = new Statement.AnimalEntered(new AnimalId(node.clock.newId(), node.id));
        try {
            node.participant().write(List.of(Saying.toAll(says)));
        } catch (Refused refused) {
            if (refused.reason() == Refused.Reason.FENCED) {
                world.story.count(Happening.REFUSED_WHILE_FENCED);
                return;
            }
            throw world.story.broken("I1", "%s is fenced and refuses for another reason: %s".formatted(node, refused));
        }
        throw world.story.broken("I1", node + " writes while it is fenced");
    }

    void sync(SimNode node) {
        if (!node.runs()) {
            return;
        }
        if (node.participant().fenced() && dice.happens(0.8)) {
            for (var awaited : node.participant().awaited()) {
                world.network.ask(node, world.node(awaited), node.id);
            }
            return;
        }
        var asks = dice.happens(0.8) ? hinted(node) : possible(node);
        dice.anyOf(asks).ifPresent(ask -> world.network.ask(node, ask.giver(), ask.journal().id));
    }

    private record Ask(SimNode giver, SimNode journal) {}

    private List<Ask> possible(SimNode node) {
        return world.nodes.stream()
                .filter(giver -> giver != node)
                .flatMap(giver -> world.nodes.stream()
                        .filter(journal -> journal == giver || world.conditions.relays() && journal != node)
                        .map(journal -> new Ask(giver, journal)))
                .toList();
    }

    /** Whoever has something new tells so, and is asked more often. */
    private List<Ask> hinted(SimNode node) {
        return possible(node).stream()
                .filter(ask -> ask.giver().disk.journal(ask.journal().id).size()
                        > node.disk.journal(ask.journal().id).size())
                .toList();
    }

    void settle(SimNode node) {
        if (node.runs()) {
            world.rules.once(node, "settles", () -> node.participant().settle());
        }
    }

    /** Writes what a keeper says, and requires that it is there when the call returns. */
    boolean write(SimNode node, String what, List<Saying> sayings) {
        return does(node, what, () -> {
            var written = node.participant().write(sayings);
            written.forEach(entry -> world.rules.requireWritten(node, entry));
        });
    }

    /** @return whether it was done, and not refused */
    boolean does(SimNode node, String what, Runnable act) {
        int before = node.disk.journal(node.id).size();
        try {
            world.story.tell(node + " " + what);
            act.run();
        } catch (Refused refused) {
            world.story.count(Happening.REFUSED);
            world.story.tell("  refused, %s: %s".formatted(refused.reason(), refused.getMessage()));
            if (node.disk.journal(node.id).size() != before) {
                throw world.story.broken("I6", "%s refused and wrote all the same".formatted(node));
            }
            return false;
        }
        world.rules.acknowledged(node, before);
        return true;
    }

    /** What is asked for twice, as after a lost answer, has one effect. */
    void perhapsAgain(SimNode node, Runnable act) {
        if (!dice.happens(0.2)) {
            return;
        }
        int before = node.disk.journal(node.id).size();
        try {
            act.run();
        } catch (Refused refused) {
            // the second of two is refused or does nothing
        }
        world.story.count(Happening.REPEATED);
        if (node.disk.journal(node.id).size() != before) {
            throw world.story.broken(
                    "I6", "%s did something for a request that it had fulfilled before".formatted(node));
        }
    }
}
