package org.demebook.consent;

import java.time.LocalDate;
import java.util.UUID;
import org.demebook.consent.NewGrant.StatedRecipient;

/**
 * Somebody saw something of a collection's, on one of its grants, on one day.
 *
 * @param seenOn the day, UTC
 * @param seenBy the keeper by name (absent when they are gone), a node by its code, or the public
 * @param times how often it was given out: each animal counts once for each answer that it was in
 */
public record DisclosureView(
        LocalDate seenOn,
        StatedRecipient seenBy,
        UUID collection,
        UUID grant,
        Purpose purpose,
        Action action,
        FieldGroup fieldGroup,
        long times) {}
