package org.demebook.approach;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.notation.Sex;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * An approach as one of its sides sees it.
 *
 * @param side on which the reader stands
 * @param proposedOn the day, UTC
 * @param openUntil the last day on which it may be answered, UTC
 * @param agreedUntil the last day on which an agreement holds, UTC; absent unless both agreed
 * @param words of the side that asks
 * @param pair what the two would come to; only while an agreement holds, and as far as it is granted
 */
@ShownTo(ShownTo.Whom.BOTH_SIDES)
public record ApproachView(
        UUID id,
        ApproachSide side,
        ApproachState state,
        LocalDate proposedOn,
        LocalDate openUntil,
        @Nullable LocalDate agreedUntil,
        Yours yours,
        Theirs theirs,
        @Nullable String words,
        @Nullable PairFigures pair) {

    /**
     * The reader's animal.
     *
     * @param animal studbook number
     */
    public record Yours(String animal, Sex sex) {}

    /**
     * The other side's animal; all but pseudonym and sex only while an agreement holds.
     *
     * @param sex the opposite of that of the reader's
     * @param animal studbook number
     * @param collection what the collection that it lives in is called
     * @param keepers sign-in names of those who act for that collection
     */
    public record Theirs(
            String pseudonym,
            Sex sex,
            @Nullable String animal,
            @Nullable String collection,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> keepers) {}

    /**
     * The two animals on the pedigree that the reader may see, or have computed with, in order to pair animals.
     *
     * @param kinship the inbreeding coefficient F of young of the two, in [0, 1]
     * @param knownAncestry the share of the young's genome, in [0, 1], that traces to stated founders
     * @param convention {@code unrelated}: an unknown parent counts as unrelated to all, which understates kinship
     * @param throughAncestorsNotShown true where the figure rests on ancestors that are granted to be computed with and not to be
     *     seen; absent otherwise
     */
    public record PairFigures(
            double kinship,
            double knownAncestry,
            String convention,
            @Nullable Boolean throughAncestorsNotShown) {}
}
