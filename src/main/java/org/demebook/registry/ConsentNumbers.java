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
    public List<Subject> ofCollections(UUID populationId, Collection<UUID> collectionIds) {
        return Animal.partiesOf(populationId, collectionIds).stream()
                .map(animal -> Subject.of(animal.id(), animal.collectionId(), animal.ownerCollectionId()))
                .toList();
    }
}
