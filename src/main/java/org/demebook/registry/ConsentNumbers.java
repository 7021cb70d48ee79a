package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.AnimalNumbers;
import org.demebook.consent.Subject;

/** Tells the room of consent which animals there are. An animal that another number stands for is that one. */
@ApplicationScoped
class ConsentNumbers implements AnimalNumbers {
    @Override
    @Transactional
    public Map<String, UUID> byNumber(UUID populationId, UUID collectionId, List<String> numbers) {
        return Animal.numbered(populationId, numbers).stream()
                .filter(animal -> AnimalSight.subject(animal).parties().contains(collectionId))
                .collect(Collectors.toMap(animal -> animal.number, animal -> animal.id));
    }

    @Override
    @Transactional
    public Map<UUID, String> numbers(UUID populationId, Collection<UUID> animalIds) {
        return Animal.numbersOf(populationId, animalIds);
    }

    @Override
    @Transactional
    public List<Subject> ofCollection(UUID populationId, UUID collectionId) {
        return Animal.<Animal>list(
                        "populationId = ?1 and sameAsId is null and (collectionId = ?2 or ownerCollectionId = ?2)"
                                + " order by id",
                        populationId,
                        collectionId)
                .stream()
                .map(AnimalSight::subject)
                .toList();
    }
}
