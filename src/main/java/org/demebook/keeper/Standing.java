package org.demebook.keeper;

import java.util.UUID;

/**
 * Who asks, and what they are in the population that they ask about: the actor that every door of a population takes.
 *
 * @param head sequence number of the population's last journal entry when the standing was read
 */
public record Standing(UUID populationId, String populationCode, UUID keeperId, Role role, long head) {
    public boolean isCoordinator() {
        return role == Role.COORDINATOR;
    }
}
