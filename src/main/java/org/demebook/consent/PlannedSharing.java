package org.demebook.consent;

import jakarta.validation.Valid;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a keeper thinks of sharing: either a grant, or a ready choice.
 *
 * @param grant nothing with a choice
 * @param choice nothing with a grant
 * @param collection for which the choice would be made; nothing when you act for one only
 */
public record PlannedSharing(
        @Nullable @Valid NewGrant grant,
        @Nullable ReadyChoice choice,
        @Nullable UUID collection) {}
