package org.demebook.consent;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A grant to be given. To give it is to consent to what the present notice says (GET /api/v1/consent-notice).
 *
 * @param collection whose keeper you are; nothing when you act for one only
 * @param animals studbook numbers of the animals that it is about; nothing for all that the collection holds or owns, now
 *     and later
 * @param from the first moment at which it holds; nothing, or one that has passed, for now
 * @param until the first moment at which it holds no longer, at most 24 months ahead; nothing for 24 months
 * @param conditions what you ask for, in your own words; kept with the grant, and no decision rests on it
 */
public record NewGrant(
        @Nullable UUID collection,
        @NotNull @Valid StatedRecipient recipient,
        @Nullable @Size(min = 1, max = 500) List<@NotNull @Size(max = 60) String> animals,
        @NotNull @Size(min = 1, max = 10) List<@NotNull FieldGroup> fieldGroups,
        @NotNull @Size(min = 1, max = 6) List<@NotNull Purpose> purposes,
        @NotNull @Size(min = 1, max = 4) List<@NotNull Action> actions,
        @Nullable Instant from,
        @Nullable Instant until,
        @Nullable @Size(max = 1000) String conditions) {

    /**
     * Who is meant.
     *
     * @param name sign-in name of one keeper; nothing for every other kind
     * @param node code of one node; nothing for every other kind
     */
    public record StatedRecipient(
            Recipient.@NotNull Kind kind,
            @Nullable @Size(min = 1, max = 40) String name,
            @Nullable @Size(min = 1, max = 10) String node) {}
}
