package org.demebook.protocol.simulation;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Queue;
import java.util.UUID;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Kept;
import org.demebook.protocol.Statement;
import org.demebook.signing.Signed;

/**
 * A few nodes that run the real protocol on simulated networks, clocks and disks, in one thread and in a time of their own. The same
 * seed is the same world.
 */
final class World {
    /** What a world is made of; a test replaces a part by one that errs. */
    static class Parts {
        Conditions conditions(Dice dice) {
            return Conditions.of(dice);
        }

        SimDisk disk(World world, int node) {
            return new SimDisk(world.written::add);
        }

        SimNode node(World world, int number, String name, SimDisk disk, SimClock clock) {
            return new SimNode(world, number, name, disk, clock);
        }

        SimNetwork network(World world, Dice dice, Conditions conditions) {
            return new SimNetwork(world, dice, conditions);
        }
    }

    private record Event(long at, long order, Runnable happens) {}

    private static final Instant DAWN = Instant.parse("2031-05-01T06:00:00Z");
    private static final List<String> NAMES = List.of("harbour", "upland", "lagoon", "ridge", "mangrove");

    final Story story;
    final Conditions conditions;
    final List<SimNode> nodes = new ArrayList<>();
    final SimNetwork network;
    final Chronicle chronicle = new Chronicle(this);
    final Rules rules = new Rules(this);
    final Queue<SimDisk.Written> written = new ArrayDeque<>();
    private final UUID population;
    private final Dice dice;
    private final Fate fate;
    private final Acts acts;
    private final PriorityQueue<Event> events =
            new PriorityQueue<>(Comparator.comparingLong(Event::at).thenComparingLong(Event::order));
    private final Map<String, Entry> entries = new HashMap<>();
    private final Map<List<Object>, byte[]> leaves = new HashMap<>();
    private long millis;
    private long order;

    World(long seed) {
        this(seed, new Parts());
    }

    World(long seed, Parts parts) {
        story = new Story(seed);
        dice = new Dice(seed);
        population = dice.id();
        conditions = parts.conditions(dice.further());
        var skew = dice.further();
        network = parts.network(this, dice.further(), conditions);
        for (int i = 0; i < conditions.nodes(); i++) {
            var off = Duration.ofMinutes(skew.between(-60L * conditions.skewHours(), 60L * conditions.skewHours()));
            var clock = new SimClock(this, dice.further(), off);
            nodes.add(parts.node(this, i, NAMES.get(i), parts.disk(this, i), clock));
            story.name(nodes.get(i).id, NAMES.get(i));
        }
        acts = new Acts(this, dice.further());
        fate = new Fate(this, dice.further());
    }

    /** Until everything has healed. @throws BrokenRule if an invariant does not hold */
    World run() {
        story.tell("a world: " + conditions);
        new Founding(this, dice.further()).found();
        nodes.forEach(node -> {
            again(60, () -> acts.act(node));
            again(40, () -> acts.sync(node));
            again(240, () -> acts.settle(node));
        });
        again(40, fate::strike);
        while (story.steps() < conditions.steps()) {
            var event = events.remove();
            millis = event.at();
            step(event.happens());
        }
        new Healing(this).heal();
        rules.atTheEnd();
        return this;
    }

    private void again(int mostMinutes, Runnable happens) {
        at(millis + dice.between(1, mostMinutes * 60_000L), () -> {
            again(mostMinutes, happens);
            happens.run();
        });
    }

    /** What a node does by itself when something new has come. */
    void settleSoon(SimNode node) {
        acts.settle(node);
    }

    void at(long when, Runnable happens) {
        events.add(new Event(when, order++, happens));
    }

    /** Something happens, a power cut included, and the rules are looked at. */
    void step(Runnable happens) {
        story.step();
        try {
            happens.run();
        } catch (PowerCut cut) {
            fate.fell(cut);
        }
        rules.afterStep();
    }

    void pass(Duration time) {
        millis += time.toMillis();
    }

    long millis() {
        return millis;
    }

    Instant now() {
        return DAWN.plusMillis(millis);
    }

    UUID population() {
        return population;
    }

    SimNode founder() {
        return nodes.get(0);
    }

    SimNode node(String id) {
        return nodes.stream().filter(node -> node.id.equals(id)).findFirst().orElseThrow();
    }

    SimNode nodeOf(SimDisk disk) {
        return nodes.stream().filter(node -> node.disk == disk).findFirst().orElseThrow();
    }

    void learn(Entry entry) {
        entries.putIfAbsent(entry.signed().compact(), entry);
    }

    Entry entry(Signed signed) {
        return entries.get(signed.compact());
    }

    Optional<Entry> entry(Kept kept) {
        return kept.entry().map(entries::get);
    }

    /** What an entry says; empty if its bytes are not there. */
    Optional<Statement> says(Kept kept) {
        return entry(kept).map(Entry::says);
    }

    /** As {@link Kept#leaf} has it; worked out once in a world, since the keys in entries cost most of what a rule does. */
    byte[] leaf(Kept kept) {
        return leaves.computeIfAbsent(List.of(kept.entry(), ByteBuffer.wrap(kept.digest())), any -> kept.leaf());
    }

    /** An entry to be put into a statement, with the keys that show who signed it. */
    Statement.Carried carried(Entry entry) {
        var author = node(entry.node());
        return new Statement.Carried(entry.signed(), Keys.chain(author.number, author.generation()));
    }

    /** What a node has of all journals, in the order of the nodes. */
    List<Entry> readBy(SimNode node) {
        return nodes.stream()
                .flatMap(author -> node.disk.journal(author.id).stream())
                .flatMap(kept -> entry(kept).stream())
                .toList();
    }
}
