package org.demebook.handover;

import java.time.Instant;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A sheet, for those who may read it.
 *
 * @param animal studbook number
 * @param code by which the paper is checked; no secret
 * @param link leads whoever has the paper to the check
 * @param digest SHA-256, in hexadecimal, of {@code says} in canonical JSON (RFC 8785)
 * @param reason why it was withdrawn
 * @param says absent where its words are not on this node, or not as they were issued
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record HandoverSheetView(
        UUID id,
        String animal,
        @Schema(implementation = String.class) SheetState state,
        String code,
        String link,
        String digest,
        Instant issuedAt,
        @Nullable Instant withdrawnAt,
        @Nullable String reason,
        long revision,
        @Nullable HandoverSheet says) {}
