package org.demebook.plot;

import org.jspecify.annotations.Nullable;

/**
 * What a row is called, and where it leads.
 *
 * @param link a path on this server, or null if it leads nowhere
 */
public record Name(String text, @Nullable String link) {
    public Name {
        if (link != null && !(link.startsWith("/") && !link.startsWith("//") && !link.startsWith("/\\"))) {
            throw new IllegalArgumentException("A name leads to a path on this server, not to " + link);
        }
    }

    public static Name of(String text) {
        return new Name(text, null);
    }
}
