package org.demebook.protocol.simulation;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;

/** What happened in a world, in short names, and how often what did. */
final class Story {
    private static final int LAST = 40;

    private final long seed;
    private final List<String> lines = new ArrayList<>();
    private final Map<Object, String> names = new HashMap<>();
    private final Map<Character, Integer> named = new HashMap<>();
    private final EnumMap<Happening, Integer> counts = new EnumMap<>(Happening.class);
    private int step;

    Story(long seed) {
        this.seed = seed;
    }

    void step() {
        step++;
    }

    int steps() {
        return step;
    }

    void tell(String line) {
        lines.add("%4d %s".formatted(step, line));
    }

    void count(Happening happening) {
        counts.merge(happening, 1, Integer::sum);
    }

    Map<Happening, Integer> counts() {
        return counts;
    }

    void name(Object id, String name) {
        names.put(id, name);
    }

    /** A short name for an id: the kind's letter and a number. */
    String name(char kind, Object id) {
        return names.computeIfAbsent(id, any -> "" + kind + named.merge(kind, 1, Integer::sum));
    }

    String node(String id) {
        return names.getOrDefault(id, id);
    }

    List<String> lines() {
        return lines;
    }

    String all() {
        return String.join("\n", lines);
    }

    BrokenRule broken(String rule, String how) {
        var last = lines.subList(Math.max(0, lines.size() - LAST), lines.size());
        return new BrokenRule(
                rule,
                "%s: %s\nseed %d, step %d; again with -Ddemebook.seed=%d. The last events:\n%s"
                        .formatted(rule, how, seed, step, seed, String.join("\n", last)));
    }

    /** SHA-256 over everything that happened. */
    String hash() {
        try {
            var digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(all().getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
