package org.demebook.registry;

import static org.demebook.problem.ProblemType.NO_SUCH_PHOTO;
import static org.demebook.problem.ProblemType.UNREADABLE_PHOTO;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalFacts.PhotoAdded;
import org.jspecify.annotations.Nullable;

/** Photographs of animals; seen by those who hold the animal or own it. */
@ApplicationScoped
public class Photos {
    @Inject
    Journal journal;

    @Inject
    Animals animals;

    /**
     * Takes everything out of an upload but the picture. Slow (a second or two for a large one): called before the
     * transaction that stores it.
     */
    PhotoFile clean(byte[] upload) {
        try {
            return PhotoFile.clean(upload);
        } catch (IllegalArgumentException e) {
            throw new Refusal(UNREADABLE_PHOTO, e.getMessage() + ".", List.of(), e);
        }
    }

    @Transactional
    PhotoView add(Standing by, String number, PhotoFile file, @Nullable String label, @Nullable LocalDate takenOn) {
        journal.open(by.populationId());
        var animal = animals.require(by, number);
        animals.requireInHand(by, animal);
        if (PhotoContent.of(by.populationId(), file.sha256()) == null) {
            new PhotoContent(by.populationId(), file).persist();
        }
        var id = Journal.newId();
        journal.record(
                by.populationId(),
                by.keeperId(),
                new PhotoAdded(id, animal.id, file.sha256(), label, takenOn, file.widthPixels(), file.heightPixels()));
        return Photo.of(by.populationId(), id).view();
    }

    /** The bytes of a picture (JPEG); to whoever may not see it, it does not exist. */
    @Transactional
    byte[] bytes(Standing by, String number, UUID photoId, boolean thumbnail) {
        var held = animals.get(by, number).held();
        var photo = Photo.of(by.populationId(), photoId);
        if (held == null
                || photo == null
                || held.photos().stream().noneMatch(shown -> shown.id().equals(photoId))) {
            throw new Refusal(NO_SUCH_PHOTO, "There is no such photograph of %s.".formatted(number));
        }
        var content = PhotoContent.of(by.populationId(), photo.sha256);
        if (content == null) {
            throw new Refusal(NO_SUCH_PHOTO, "The picture itself is not on this node.");
        }
        return thumbnail ? content.thumbnail : content.picture;
    }
}
