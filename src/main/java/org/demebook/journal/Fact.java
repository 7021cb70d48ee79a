package org.demebook.journal;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Something that happened, named in the past tense: a record whose components are the words of the journal. Numbers with
 * a fraction are written as strings, since the journal holds no floats.
 */
public interface Fact {
    /** From which day on it holds in the keeper's world, as EDTF; null when that is the moment of its recording. */
    default @Nullable String validFrom() {
        return null;
    }

    /** The entry that this one corrects; null when it corrects none. */
    default @Nullable Long supersedes() {
        return null;
    }

    static String typeOf(Class<? extends Fact> fact) {
        return fact.getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
    }
}
