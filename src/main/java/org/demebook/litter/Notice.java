package org.demebook.litter;

import org.demebook.problem.Finding;
import org.demebook.problem.Finding.Level;
import org.demebook.registry.Breach;
import org.jspecify.annotations.Nullable;

/** What was done with a form and is good to know; of no rule of the catalogue. */
final class Notice {
    private Notice() {}

    static Breach of(String field, @Nullable String value, String message) {
        return new Breach(null, new Finding(Level.NOTICE, null, field, value, message, null, null));
    }
}
