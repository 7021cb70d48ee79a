package org.demebook.care;

import java.time.Instant;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Tasks that you do not want to hear of.
 *
 * @param animal studbook number of the one that it is about; absent when it is about none, or about all
 * @param task key of the one task that is silent; absent when it is a kind
 * @param collection where it holds
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record SilenceView(
        UUID id,
        SilenceScope scope,
        CareKind kind,
        @Nullable String animal,
        @Nullable String task,
        UUID collection,
        Instant silencedAt) {}
