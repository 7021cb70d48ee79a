package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.notation.Sex;
import org.demebook.registry.AnimalFacts.IdentifierAdded;
import org.demebook.registry.AnimalFacts.SexDetermined;
import org.demebook.wall.WholeRegister;

/** Animals that come from another node: their records are taken over as they were told, and nothing is refused any more. */
@ApplicationScoped
public class Arrivals {
    @Inject
    Journal journal;

    /** The record with a studbook number, or with an id, whoever may see it. */
    @WholeRegister
    @Transactional
    public Optional<UUID> numbered(UUID populationId, String number) {
        return Animal.numbered(populationId, number).map(animal -> animal.id);
    }

    /** Whether a record has this id. */
    @WholeRegister
    @Transactional
    public boolean has(UUID populationId, UUID animalId) {
        return Animal.of(populationId, animalId) != null;
    }

    /** Registers one that was never here. */
    @Transactional(TxType.MANDATORY)
    public void register(UUID populationId, UUID actorId, AnimalRegistered animal) {
        journal.record(populationId, actorId, animal);
        Animal.flush();
    }

    /**
     * Adds to a record from before what was found out since: a sex where none was known, and identifiers that it did not bear.
     *
     * @param collectionId into which it comes
     */
    @Transactional(TxType.MANDATORY)
    public void complete(
            UUID populationId, UUID actorId, UUID animalId, Sex sex, List<IdentifierView> borne, UUID collectionId) {
        var animal = Animal.of(populationId, animalId);
        if (animal.sex == Sex.UNKNOWN && sex != Sex.UNKNOWN) {
            journal.record(populationId, actorId, new SexDetermined(animalId, sex, null, null, animal.sexSeq));
        }
        var present = Identifier.of(populationId, animalId);
        for (var identifier : borne) {
            if (present.stream().noneMatch(other -> other.view().isSame(identifier))) {
                journal.record(populationId, actorId, new IdentifierAdded(animalId, identifier, collectionId));
            }
        }
        Animal.flush();
    }
}
