package org.demebook.transfer;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.demebook.registry.AnimalView;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A transfer as one of its two sides sees it.
 *
 * @param given true for the side that gives, false for the one that receives
 * @param from sign-in name of the keeper who offered it; absent when they have left this node
 * @param to sign-in name of the keeper who receives it; absent while nobody has claimed it
 * @param fromCollection only for the side that gives
 * @param toCollection only for the side that receives, once it has accepted or claimed
 * @param dispute the open dispute over where its animal is, which this transfer does not agree with
 * @param expiresAt until then it can be accepted, or claimed with the present code
 * @param note what the giver wrote to the offer
 * @param reason why it was refused or withdrawn
 */
@ShownTo(ShownTo.Whom.BOTH_SIDES)
public record TransferView(
        UUID id,
        boolean given,
        Kind kind,
        State state,
        AnimalView animal,
        @Nullable String from,
        @Nullable String to,
        @Nullable UUID fromCollection,
        @Nullable UUID toCollection,
        @Nullable UUID dispute,
        Instant offeredAt,
        Instant expiresAt,
        @Nullable LocalDate handedOverOn,
        @Nullable Instant endedAt,
        @Nullable String note,
        @Nullable String reason,
        long revision) {}
