package org.demebook.handover;

import java.time.LocalDate;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What whoever has the paper learns of it: no names, no places, no holder.
 *
 * @param genuine issued by this register, and unchanged since
 * @param inWords what {@code state} means for the one who has the paper
 * @param animal studbook number
 * @param issuedOn in UTC
 * @param dam studbook number as the sheet has it; absent when it says that she is unknown, or when it is not genuine
 * @param sire as the sheet has it, in words by number; absent when it is not genuine
 * @param digest SHA-256, in hexadecimal, of what the sheet says
 */
@ShownTo(ShownTo.Whom.EVERYBODY)
public record SheetCheck(
        boolean genuine,
        @Schema(implementation = String.class) SheetState state,
        String inWords,
        String animal,
        LocalDate issuedOn,
        @Nullable String dam,
        @Nullable String sire,
        String digest,
        String code) {}
