package org.demebook.breeding;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.demebook.gestation.HowKnown;
import org.demebook.gestation.Landmark;
import org.jspecify.annotations.Nullable;

/** A breeding sign as the arithmetic of this room looks at it. */
record Sign(
        UUID id,
        UUID femaleId,
        SignKind kind,
        LocalDate on,
        @Nullable Instant at,
        HowKnown howKnown,
        @Nullable UUID maleId) {

    /** As a day to count from; empty for a sign from which nobody counts. */
    Optional<Landmark.Noted> landmark() {
        return Optional.ofNullable(
                        switch (kind) {
                            case OVULATION -> Landmark.OVULATION;
                            case POST_OVULATION_SHED -> Landmark.POST_OVULATION_SHED;
                            case LAYING -> Landmark.LAYING;
                            case COPULATION, LABOUR_STARTED, LABOUR_FINISHED -> null;
                        })
                .map(landmark -> new Landmark.Noted(landmark, on, howKnown));
    }

    /** The moment, or the first one of the day: what is too long is told too early rather than too late. */
    Instant moment() {
        return at == null ? on.atStartOfDay(ZoneOffset.UTC).toInstant() : at;
    }
}
