package org.demebook.protocol;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Keeps a node from writing until every other node told how far its journal went: it may have been restored from a backup, and not know
 * what it said. Up at every start. In memory alone: a start is what it is about.
 */
final class Fence {
    private final Set<String> cleared = new TreeSet<>();
    private boolean up = true;

    /** Changes whenever the question is asked anew. */
    long round;

    /** Of other journals: how often their node asked how far it goes here. Outlives what is folded. */
    private final Map<String, Long> asked = new HashMap<>();

    long epoch(String node) {
        return asked.getOrDefault(node, 0L);
    }

    /** From here on nothing that is under way from this journal is taken in: its node may be told now that it never arrived. */
    void asked(String node) {
        asked.merge(node, 1L, Long::sum);
    }

    boolean isUp() {
        return up;
    }

    /** Up again: somebody knows more of the own journal than is here. */
    void raise() {
        up = true;
        round++;
        cleared.clear();
    }

    /** It knows no more of the own journal than is here. */
    void clear(String node) {
        cleared.add(node);
    }

    /** Down, once nobody is left who might know more. */
    void lower(Set<String> others) {
        if (up && cleared.containsAll(others)) {
            up = false;
        }
    }

    Set<String> awaited(Set<String> others) {
        if (!up) {
            return Set.of();
        }
        var awaited = new TreeSet<>(others);
        awaited.removeAll(cleared);
        return awaited;
    }
}
