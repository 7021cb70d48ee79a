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
 * @param instead where a litter is not to be: the best partners that are left, at most three, by what the reader may see
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record RecommendationView(
        String animal,

        @Schema(
                implementation = String.class,
                enumeration = {"breed", "move", "rest", "hold"})
        Doing doing,

        String words,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Yours> litters,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Instead> instead) {

    public enum Doing {
        BREED,
        MOVE,
        REST,
        HOLD;

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * @param partner studbook number; absent where its keeper does not show it to the reader
     * @param keep how many of the young to keep, if they are born
     * @param inbreedingOfYoung F, on the pedigree as the reader may see it; absent where they do not see both
     * @param arriveBy the last day on which one that travels may arrive; absent where both live with the reader
     * @param state what both keepers answered, together
     * @param collection what the collection that the partner lives in is called; only when both accepted, and as far as it is granted
     * @param keepers sign-in names of those who act for that collection; likewise
     * @param answer of the reader's side; absent while it gave none
     * @param reason likewise
     * @param note only to who wrote it
     */
    public record Yours(
            UUID litter,
            @Nullable String partner,
            int keep,
            @Nullable Double inbreedingOfYoung,
            LocalDate pairOn,
            @Nullable LocalDate arriveBy,
            LitterState state,
            @Nullable String collection,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> keepers,
            @Nullable Answer answer,
            @Nullable AnswerReason reason,
            @Nullable String note) {}

    /**
     * @param partner studbook number
     * @param inbreedingOfYoung F of young of the two, on the pedigree as the reader may see it
     * @param keep how many young kept leave most gene diversity
     */
    public record Instead(String partner, double inbreedingOfYoung, int keep) {}
}
