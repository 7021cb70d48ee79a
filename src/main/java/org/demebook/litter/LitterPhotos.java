package org.demebook.litter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.litter.LitterFacts.LitterPhotographed;
import org.demebook.photo.Moment;
import org.demebook.photo.PhotoFile;
import org.demebook.photo.PhotoView;
import org.demebook.photo.Photos;
import org.demebook.photo.TakenPhoto;
import org.jspecify.annotations.Nullable;

/** Photographs of litters, before and after separation; seen by those who see the litter. */
@ApplicationScoped
public class LitterPhotos {
    @Inject
    Journal journal;

    @Inject
    SeenLitters litters;

    @Inject
    Photos photos;

    /** By those who act for the collection that it was born in. */
    @Transactional
    public PhotoView add(
            Standing by,
            UUID litterId,
            Moment moment,
            PhotoFile file,
            @Nullable String label,
            @Nullable LocalDate takenOn) {
        journal.open(by.populationId());
        var litter = litters.requireOwn(by, litterId);
        photos.keep(by.populationId(), file);
        var taken = TakenPhoto.of(Journal.newId(), file, label, takenOn);
        journal.record(by.populationId(), by.keeperId(), LitterPhotographed.of(litter.id, moment, taken));
        return taken.view(moment);
    }

    /** The oldest first; refuses with NO_SUCH_LITTER as the litter itself does. */
    @Transactional
    public List<PhotoView> of(Standing by, UUID litterId) {
        return photos.ofLitter(by.populationId(), litters.require(by, litterId).id);
    }

    @Transactional
    byte[] bytes(Standing by, UUID litterId, UUID photoId, boolean thumbnail) {
        return photos.bytes(by.populationId(), of(by, litterId), photoId, "this litter", thumbnail);
    }
}
