package org.demebook.protocol.simulation;

import java.time.Duration;
import java.util.List;
import java.util.Set;

/** Nothing breaks any more, and everybody asks everybody until there is nothing left to do. */
final class Healing {
    private static final int MOST_ROUNDS = 40;
    private static final Duration PAST_EVERY_EXPIRY = Duration.ofDays(1_200);

    private final World world;

    Healing(World world) {
        this.world = world;
    }

    void heal() {
        world.network.calm();
        world.story.tell("everything heals");
        for (var node : world.nodes) {
            node.disk.steady();
            if (!node.runs() && !node.isGone()) {
                world.step(node::start);
            }
        }
        for (var gone : world.nodes) {
            if (gone.isGone()) {
                world.nodes.stream().filter(node -> !node.isGone()).forEach(node -> node.setAside(gone.id));
            }
        }
        untilNothingChanges();
        world.pass(PAST_EVERY_EXPIRY);
        untilNothingChanges();
    }

    private void untilNothingChanges() {
        List<Long> before = List.of();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            var now = living().map(node -> node.disk.version()).toList();
            if (now.equals(before)) {
                requireNobodyFenced();
                return;
            }
            before = now;
            living().forEach(this::round);
        }
        throw world.story.broken(
                "I12", "after %d rounds without any fault there is still something new".formatted(MOST_ROUNDS));
    }

    private java.util.stream.Stream<SimNode> living() {
        return world.nodes.stream().filter(node -> !node.isGone());
    }

    /** Each author is asked for its own journal; somebody else where it would have more to give. */
    private void round(SimNode asker) {
        living().filter(giver -> giver != asker)
                .forEach(giver -> world.step(() -> {
                    for (var journal : world.nodes) {
                        boolean awaited = journal == asker
                                && asker.participant().awaited().contains(giver.id);
                        if (awaited || journal == giver || journal != asker && hasMore(giver, asker, journal)) {
                            world.network.ask(asker, giver, journal.id);
                        }
                    }
                }));
        world.step(() ->
                world.rules.once(asker, "settles", () -> asker.participant().settle()));
    }

    private boolean hasMore(SimNode giver, SimNode asker, SimNode journal) {
        return (world.conditions.relays() || journal.isGone())
                && giver.disk.journal(journal.id).size()
                        > asker.disk.journal(journal.id).size();
    }

    private void requireNobodyFenced() {
        living().filter(node -> node.participant().fenced()).findFirst().ifPresent(node -> {
            throw world.story.broken(
                    "I12",
                    "%s stays fenced and waits for %s"
                            .formatted(node, names(node.participant().awaited())));
        });
    }

    private List<String> names(Set<String> ids) {
        return ids.stream().map(world.story::node).toList();
    }
}
