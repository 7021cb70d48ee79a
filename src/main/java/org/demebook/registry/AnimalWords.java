package org.demebook.registry;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Forgotten;
import org.demebook.photo.Photos;
import org.demebook.registry.AnimalFacts.AnimalDescribed;
import org.demebook.registry.AnimalFacts.AnimalDied;
import org.demebook.registry.AnimalFacts.IdentifierAdded;
import org.demebook.registry.AnimalFacts.IdentifierEnded;
import org.demebook.registry.AnimalFacts.PhotoAdded;
import org.demebook.registry.AnimalFacts.SameAnimalClaimed;

/** How the words of facts about animals are taken out of their rows: a row shows those of one entry, and only these go. */
final class AnimalWords {
    private AnimalWords() {}

    static boolean forget(Forgotten forgotten, Photos photos) {
        var populationId = forgotten.entry().populationId();
        long seq = forgotten.entry().seq();
        var left = forgotten.left();
        if (left instanceof SameAnimalClaimed claimed) {
            SameAnimalClaim.of(populationId, claimed.claimId()).evidence = claimed.evidence();
        } else if (left instanceof PhotoAdded added) {
            return !photos.has(populationId, added.photoId());
        } else if (left instanceof AnimalRegistered registered) {
            return forget(forgotten, registered);
        } else if (left instanceof AnimalDescribed described) {
            var animal = Animal.of(populationId, described.animalId());
            if (stays(animal, forgotten.sharedCollections())) {
                return false;
            }
            if (animal.descriptionSeq == seq) {
                animal.notes = described.notes();
            }
        } else if (left instanceof AnimalDied died) {
            var animal = Animal.of(populationId, died.animalId());
            if (stays(animal, forgotten.sharedCollections())) {
                return false;
            }
            if (Objects.equals(animal.deathSeq, seq)) {
                animal.deathCause = died.cause();
            }
        } else if (left instanceof IdentifierAdded added) {
            if (stays(Animal.of(populationId, added.animalId()), forgotten.sharedCollections())) {
                return false;
            }
            drop(forgotten, added.animalId());
        } else if (left instanceof IdentifierEnded ended) {
            // whose it was that ended stays to be known as long as somebody else's entry says that it began
            var value = ((IdentifierEnded) forgotten.said()).identifier().value();
            return !stays(Animal.of(populationId, ended.animalId()), forgotten.sharedCollections())
                    && !forgotten.saidByOthers().test(value);
        }
        return true;
    }

    private static boolean forget(Forgotten forgotten, AnimalRegistered registered) {
        var animal = Animal.of(forgotten.entry().populationId(), registered.animalId());
        if (stays(animal, forgotten.sharedCollections())) {
            return false;
        }
        if (animal.descriptionSeq == forgotten.entry().seq()) {
            animal.notes = registered.notes();
        }
        drop(forgotten, animal.id);
        return true;
    }

    /** Transponders are nobody's words: they stay. */
    private static void drop(Forgotten forgotten, UUID animalId) {
        Identifier.delete(
                "populationId = ?1 and animalId = ?2 and kind in ?3 and addedSeq = ?4",
                forgotten.entry().populationId(),
                animalId,
                List.of(Identifier.MARK, Identifier.OWN_REFERENCE),
                forgotten.entry().seq());
    }

    /** Whether it is in a collection, or belongs to one, that others act for too. */
    private static boolean stays(Animal animal, Set<UUID> shared) {
        return animal.collectionId != null && shared.contains(animal.collectionId)
                || animal.ownerCollectionId != null && shared.contains(animal.ownerCollectionId);
    }
}
