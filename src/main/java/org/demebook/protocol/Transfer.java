package org.demebook.protocol;

import java.time.Instant;
import java.util.UUID;

/** A hand-over between two nodes, as far as both journals are held here. */
public record Transfer(
        UUID id, AnimalId animal, String from, String to, State state, Instant offeredAt, Instant expiresAt) {
    public enum State {
        OFFERED,
        ACCEPTED,
        /** The giver holds it no more, the receiver not yet. */
        RELEASED,
        TAKEN,
        WITHDRAWN,
        REJECTED;

        public boolean isEnded() {
            return this == TAKEN || this == WITHDRAWN || this == REJECTED;
        }
    }
}
