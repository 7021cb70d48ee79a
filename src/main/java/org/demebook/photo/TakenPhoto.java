package org.demebook.photo;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a fact says of a photograph; the picture itself is too large for a journal and is kept by its digest.
 *
 * @param sha256 of the picture, in lower-case hexadecimal
 */
public record TakenPhoto(
        UUID photoId,
        String sha256,
        @Nullable String label,
        @Nullable LocalDate takenOn,
        int widthPixels,
        int heightPixels) {
    public static TakenPhoto of(UUID photoId, PhotoFile file, @Nullable String label, @Nullable LocalDate takenOn) {
        return new TakenPhoto(photoId, file.sha256(), label, takenOn, file.widthPixels(), file.heightPixels());
    }

    /** @param moment of a litter; null for an animal */
    public PhotoView view(@Nullable Moment moment) {
        return new PhotoView(photoId, moment, label, takenOn, widthPixels, heightPixels);
    }
}
