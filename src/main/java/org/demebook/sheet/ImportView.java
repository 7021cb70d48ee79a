package org.demebook.sheet;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * An import as the keeper who started it sees it.
 *
 * @param state {@code running}; {@code done}; {@code refused}: the findings say why, nothing was imported; or {@code
 *     interrupted}: the server stopped meanwhile, nothing was imported
 * @param rowsDone rows known before or recorded so far; they count only once the import is done
 * @param errors all of them, shown or not
 * @param findings the first 1 000, by row
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record ImportView(
        UUID id,
        String state,
        int rowsTotal,
        int rowsDone,
        int animalsAdded,
        int alreadyKnown,
        int errors,
        int warnings,
        List<SheetFinding> findings,
        Instant startedAt,
        @Nullable Instant endedAt) {}
