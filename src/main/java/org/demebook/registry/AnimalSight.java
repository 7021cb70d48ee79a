package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.demebook.consent.Action;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.ListCondition;
import org.demebook.consent.Purpose;
import org.demebook.consent.Subject;
import org.demebook.keeper.Standing;

/** Which animals somebody sees, and what of them: as those who hold and own them have granted. */
@ApplicationScoped
class AnimalSight {
    @Inject
    Consents consents;

    @Inject
    Clock clock;

    /** Looked through while one request is answered. */
    Lens lens(Standing by) {
        return consents.lens(by, Purpose.PEDIGREE_VIEW, clock.instant());
    }

    /** Writes down for their keepers what of their animals was shown. */
    void disclosed(Lens lens) {
        consents.disclosed(lens);
    }

    /** Whether there is such an animal, for all that the asker may know. */
    boolean sees(Standing by, Animal animal) {
        return shows(lens(by), animal, FieldGroup.IDENTITY);
    }

    static boolean shows(Lens lens, Animal animal, FieldGroup fieldGroup) {
        return lens.may(subject(animal), fieldGroup, Action.READ);
    }

    /** Whether each animal on a way through the pedigree is shown, and its parents. */
    static boolean showsWay(Lens lens, UUID populationId, List<String> numbers) {
        return Animal.numbered(populationId, numbers).stream()
                .allMatch(link -> shows(lens, link, FieldGroup.IDENTITY) && shows(lens, link, FieldGroup.PARENTAGE));
    }

    List<Animal> seen(Standing by, List<Animal> animals) {
        var lens = lens(by);
        return animals.stream()
                .filter(animal -> shows(lens, animal, FieldGroup.IDENTITY))
                .toList();
    }

    /** The same of a list that is read from the database: {@code a} is the animal. */
    ListCondition condition(Standing by) {
        return Consents.condition(
                consents.audience(by), Purpose.PEDIGREE_VIEW, FieldGroup.IDENTITY, Action.READ, clock.instant());
    }

    static Subject subject(Animal animal) {
        return Subject.of(animal.id, animal.collectionId, animal.ownerCollectionId);
    }
}
