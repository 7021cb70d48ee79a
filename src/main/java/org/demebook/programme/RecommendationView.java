package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What a plan recommends for one animal of the reader's.
 *
 * @param animal studbook number
 * @param doing {@code breed}, where it lives; {@code move}: to its partner, for the season; {@code rest}; {@code hold}: something stands in
 *     the way
 * @param words with the reason
 * @param litters that the plan proposes for it; a male may have several
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
record RecommendationView(
        String animal,

        @Schema(
                implementation = String.class,
                enumeration = {"breed", "move", "rest", "hold"})
        Doing doing,

        String words,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Yours> litters) {

    enum Doing {
        BREED,
        MOVE,
        REST,
        HOLD;

        @JsonValue
        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * @param partner studbook number; absent where its keeper does not show it to the reader
     * @param keep how many of the young to keep, if they are born
     * @param inbreedingOfYoung F, on the pedigree as the reader may see it; absent where they do not see both
     * @param arriveBy the last day on which one that travels may arrive; absent where both live with the reader
     * @param state what both keepers answered, together
     * @param answer the reader's own; absent while they gave none
     */
    record Yours(
            UUID litter,
            @Nullable String partner,
            int keep,
            @Nullable Double inbreedingOfYoung,
            LocalDate pairOn,
            @Nullable LocalDate arriveBy,
            LitterState state,
            @Nullable Answer answer) {}
}
