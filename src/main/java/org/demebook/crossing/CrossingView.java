package org.demebook.crossing;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.registry.AnimalView;
import org.demebook.registry.LocalityClaim;
import org.demebook.rest.ShownTo;
import org.demebook.transfer.Kind;
import org.jspecify.annotations.Nullable;

/**
 * A crossing as the side on this node sees it.
 *
 * @param given true where this node gives, false where it receives
 * @param node code of the other node; its id where it has no seat any more
 * @param from sign-in name of the giver: on this node, or as the giver of another node told it; absent where they did not
 * @param to sign-in name of the receiver; absent once the giver of this node has left it
 * @param animal its record in this register; absent for the receiver until it arrived
 * @param told what the giver's node told of it, for the receiver; absent for the giver, and where the offer came to nothing
 * @param collection from which you offered it, or into which you accepted it
 * @param movedAt when it was released, or accepted
 * @param endedAt when it arrived, or came to nothing
 * @param reason why it was withdrawn; for the giver alone
 * @param nodeGone true where the other node was gone for good before it took the animal, which has a keeper on this node since; for
 *     the giver
 * @param reach how far the other node is known to have followed; while the crossing is open
 */
@ShownTo(ShownTo.Whom.BOTH_SIDES)
public record CrossingView(
        UUID id,
        boolean given,
        Kind kind,
        CrossingState state,
        String node,
        @Nullable String from,
        @Nullable String to,
        @Nullable AnimalView animal,
        @Nullable ToldAnimal told,
        @Nullable UUID collection,
        Instant offeredAt,
        Instant expiresAt,
        @Nullable LocalDate handedOverOn,
        @Nullable Instant movedAt,
        @Nullable Instant endedAt,
        @Nullable String note,
        @Nullable String reason,
        @Nullable Boolean nodeGone,
        @Nullable Reach reach,
        long revision) {

    /**
     * An animal as the giver's node told it.
     *
     * @param forebears its ancestors as far as they were granted, at most five generations; those that were not are not there
     */
    public record ToldAnimal(
            String number,
            Sex sex,
            @Nullable RoughDate born,
            Origin origin,
            @Nullable LocalityClaim locality,

            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> transponders,

            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> marks,

            @Nullable String notes,
            List<ToldForebear> forebears) {}

    /**
     * @param line by which it is an ancestor, {@code dam} and {@code sire} with hyphens: {@code dam-sire} is the dam's sire
     * @param number absent where it was not told
     * @param born year; absent where it is unknown, or was not told
     * @param share with which probability it is the sire, in percent; absent where it is the only one, and of a dam
     */
    public record ToldForebear(
            String line,
            @Nullable String number,
            @Nullable Sex sex,
            @Nullable Integer born,
            @Nullable Integer share) {}

    /**
     * @param fetched whether the other node is known to have the offer; always false for the receiver
     * @param heardAt when it was heard of last; absent when it never was
     */
    public record Reach(boolean fetched, @Nullable Instant heardAt) {}
}
