package org.demebook.photo;

import java.time.LocalDate;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A photograph; position, camera data and every other hidden text were taken out before it was stored.
 *
 * @param moment of a litter: before or after its separation; absent for an animal
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record PhotoView(
        UUID id,
        @Nullable Moment moment,
        @Nullable String label,
        @Nullable LocalDate takenOn,
        int widthPixels,
        int heightPixels) {}
