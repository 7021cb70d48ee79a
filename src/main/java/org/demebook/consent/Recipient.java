package org.demebook.consent;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * To whom a grant is given.
 *
 * @param keeperId of one keeper; null for every other kind
 * @param node code of one node; null for every other kind
 */
public record Recipient(
        Kind kind, @Nullable UUID keeperId, @Nullable String node) {
    /** Each of them by a word. */
    public enum Kind {
        /** One keeper, in whatever role. */
        KEEPER,
        /** Everybody who belongs to the population; a coordinator is a member too. */
        MEMBERS,
        COORDINATORS,
        /** Everybody, signed in or not, and every node. */
        PUBLIC,
        /** Another node, which keeps it for its own keepers. */
        NODE;

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        public static Kind parse(String word) {
            return Wording.parse(Kind.class, word);
        }

        @JsonValue
        public String word() {
            return Wording.word(this);
        }
    }

    public static final Recipient MEMBERS = new Recipient(Kind.MEMBERS, null, null);
    public static final Recipient COORDINATORS = new Recipient(Kind.COORDINATORS, null, null);
    public static final Recipient PUBLIC = new Recipient(Kind.PUBLIC, null, null);

    public Recipient {
        if ((kind == Kind.KEEPER) != (keeperId != null) || (kind == Kind.NODE) != (node != null)) {
            throw new IllegalArgumentException("a keeper has an id, a node a code, and nobody else has either");
        }
    }

    public static Recipient keeper(UUID keeperId) {
        return new Recipient(Kind.KEEPER, keeperId, null);
    }

    public static Recipient node(String code) {
        return new Recipient(Kind.NODE, null, code);
    }
}
