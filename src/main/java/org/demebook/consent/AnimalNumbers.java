package org.demebook.consent;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What this room asks of the register, which knows which animals there are. */
public interface AnimalNumbers {
    /**
     * Animals by studbook number, as far as the collection has a say in them: of a number that is unknown, mistyped or
     * somebody else's, nothing comes back.
     */
    Map<String, UUID> byNumber(UUID populationId, UUID collectionId, List<String> numbers);

    /** Studbook numbers by id. */
    Map<UUID, String> numbers(UUID populationId, Collection<UUID> animalIds);

    /** What the collections have a say in, each animal once and with all its parties. */
    List<Subject> ofCollections(UUID populationId, Collection<UUID> collectionIds);
}
