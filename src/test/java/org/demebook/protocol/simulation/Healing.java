package org.demebook.protocol.simulation;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

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
        for (int round = 0; round < MOST_ROUNDS; round++) {
            living().forEach(asker -> round(asker, this::hasNews));
            if (noneHasNews()) {
                var before = versions();
                living().forEach(asker -> round(asker, (giver, its, journal) -> journal == giver));
                if (noneHasNews() && versions().equals(before)) {
                    requireNobodyFenced();
                    return;
                }
            }
        }
        throw world.story.broken(
                "I12", "after %d rounds without any fault there is still something new".formatted(MOST_ROUNDS));
    }

    private List<Long> versions() {
        return living().map(node -> node.disk.version()).toList();
    }

    private boolean noneHasNews() {
        return living().noneMatch(asker -> living().anyMatch(giver ->
                world.nodes.stream().anyMatch(journal -> giver != asker && hasNews(giver, asker, journal))));
    }

    private Stream<SimNode> living() {
        return world.nodes.stream().filter(node -> !node.isGone());
    }

    private interface Wanted {
        boolean of(SimNode giver, SimNode asker, SimNode journal);
    }

    private void round(SimNode asker, Wanted wanted) {
        living().filter(giver -> giver != asker)
                .forEach(giver -> world.step(() -> {
                    for (var journal : world.nodes) {
                        boolean awaited = journal == asker
                                && asker.participant().awaited().contains(giver.id);
                        if (awaited || wanted.of(giver, asker, journal)) {
                            world.network.ask(asker, giver, journal.id);
                        }
                    }
                }));
        world.step(() ->
                world.rules.once(asker, "settles", () -> asker.participant().settle()));
    }

    /** At others than the author where these are asked at all, or where the author is gone. */
    private boolean hasNews(SimNode giver, SimNode asker, SimNode journal) {
        if (journal == giver && asker.participant().cursorAgain(journal.id).isPresent()) {
            return true;
        }
        return journal != asker
                && (journal == giver || world.conditions.relays() || journal.isGone())
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
