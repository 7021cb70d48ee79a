package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.photo.PhotoFile;
import org.demebook.photo.PhotoView;
import org.demebook.photo.Photos;
import org.demebook.photo.TakenPhoto;
import org.demebook.registry.AnimalFacts.PhotoAdded;
import org.jspecify.annotations.Nullable;

/** Photographs of animals; seen by those who hold the animal or own it, added by its holder. */
@ApplicationScoped
public class AnimalPhotos {
    @Inject
    Journal journal;

    @Inject
    Animals animals;

    @Inject
    Photos photos;

    /** Adds one, cleaned before by {@link Photos#clean}; by the holder. */
    @Transactional
    public PhotoView add(
            Standing by, String number, PhotoFile file, @Nullable String label, @Nullable LocalDate takenOn) {
        journal.open(by.populationId());
        var animal = animals.require(by, number);
        animals.requireInHand(by, animal);
        photos.keep(by.populationId(), file);
        var taken = TakenPhoto.of(Journal.newId(), file, label, takenOn);
        journal.record(by.populationId(), by.keeperId(), PhotoAdded.of(animal.id, taken));
        return taken.view(null);
    }

    /** The bytes of a picture (JPEG); to whoever may not see it, it does not exist. */
    @Transactional
    byte[] bytes(Standing by, String number, UUID photoId, boolean thumbnail) {
        var held = animals.get(by, number).held();
        List<PhotoView> shown = held == null ? List.of() : held.photos();
        return photos.bytes(by.populationId(), shown, photoId, number, thumbnail);
    }
}
