package org.demebook.protocol;

import java.util.UUID;
import java.util.regex.Pattern;

/**
 * An animal between nodes, written {@code uuid@node}: nobody but the node in its name can have registered it. Says nothing else: it
 * is not the studbook number, and random.
 *
 * @param node id of the node that registered it
 */
public record AnimalId(UUID id, String node) implements Comparable<AnimalId> {
    private static final Pattern FORM =
            Pattern.compile("([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})@([A-Za-z0-9_-]{43})");

    /** @throws IllegalArgumentException if it is not one in its only form */
    public static AnimalId parse(String text) {
        var parts = FORM.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException("not the id of an animal");
        }
        return new AnimalId(UUID.fromString(parts.group(1)), parts.group(2));
    }

    /** By the written form, so that every language orders them alike. */
    @Override
    public int compareTo(AnimalId other) {
        return toString().compareTo(other.toString());
    }

    @Override
    public String toString() {
        return id + "@" + node;
    }
}
