package org.demebook.protocol;

import java.util.Optional;
import java.util.UUID;

/**
 * A time during which one node holds an animal: from its entering, taking or adopting to its release.
 *
 * @param began the transfer by which it came; empty: it was entered here, or adopted
 */
final class Stint {
    final AnimalId animal;
    final Optional<UUID> began;
    final Optional<Statement.Adopted> adoption;

    /** The transfer by which it goes: on offer, or released. Empty: neither. */
    Optional<UUID> leaving = Optional.empty();

    boolean released;
    long releasedSeq;

    Stint(AnimalId animal, Optional<UUID> began, Optional<Statement.Adopted> adoption) {
        this.animal = animal;
        this.began = began;
        this.adoption = adoption;
    }
}
