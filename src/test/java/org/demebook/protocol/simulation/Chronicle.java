package org.demebook.protocol.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.demebook.protocol.Kept;

/** Of each journal what is on any disk, those of fallen nodes included; of what became durable later than another copy, whether it is the same. */
final class Chronicle {
    private final World world;
    private final Map<String, List<Kept>> journals = new HashMap<>();

    Chronicle(World world) {
        this.world = world;
    }

    List<Kept> journal(String node) {
        return journals.getOrDefault(node, List.of());
    }

    /** @return whether nobody had it before */
    boolean see(SimNode where, String node, Kept kept) {
        var journal = journals.computeIfAbsent(node, any -> new ArrayList<>());
        int index = (int) kept.seq() - 1;
        if (index > journal.size()) {
            throw world.story.broken(
                    "I4",
                    "%s has entry %d of %s, and nobody has entry %d"
                            .formatted(where, kept.seq(), world.story.node(node), journal.size() + 1));
        }
        if (index == journal.size()) {
            journal.add(kept);
            return true;
        }
        requireTheSame(where, node, journal.get(index), kept);
        if (journal.get(index).entry().isEmpty()) {
            journal.set(index, kept);
        }
        return false;
    }

    private void requireTheSame(SimNode where, String node, Kept known, Kept kept) {
        if (!Arrays.equals(world.leaf(known), world.leaf(kept))) {
            throw world.story.broken(
                    "I4",
                    "%s has another entry %d of %s than somebody else"
                            .formatted(where, kept.seq(), world.story.node(node)));
        }
        boolean same = equal(known.entry(), kept.entry())
                && equal(known.salt().map(Arrays::hashCode), kept.salt().map(Arrays::hashCode));
        if (!same) {
            throw world.story.broken(
                    "I5",
                    "%s has other bytes of entry %d of %s than somebody else"
                            .formatted(where, kept.seq(), world.story.node(node)));
        }
    }

    private static <T> boolean equal(Optional<T> one, Optional<T> other) {
        return one.isEmpty() || other.isEmpty() || one.equals(other);
    }

    /** After a disk lost something: what is there now on any of them. */
    void readAgain(List<SimNode> nodes) {
        journals.clear();
        for (var where : nodes) {
            if (!where.isGone()) {
                for (var author : nodes) {
                    for (var kept : where.disk.journal(author.id)) {
                        see(where, author.id, kept);
                    }
                }
            }
        }
    }
}
