package org.demebook.protocol;

import java.util.Optional;
import java.util.Set;

/**
 * A statement and who may read it.
 *
 * @param readers of a {@link Statement.Restricted} one; empty: every node of the population, and always of the others
 */
public record Saying(Statement says, Optional<Set<String>> readers) {
    public Saying {
        readers = readers.map(Set::copyOf);
        if (readers.isPresent() && !(says instanceof Statement.Restricted)) {
            throw new IllegalArgumentException("every node of the population may read this");
        }
    }

    public static Saying toAll(Statement says) {
        return new Saying(says, Optional.empty());
    }

    public static Saying to(Set<String> readers, Statement.Restricted says) {
        return new Saying(says, Optional.of(readers));
    }
}
