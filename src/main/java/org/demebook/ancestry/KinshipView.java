package org.demebook.ancestry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * How two animals are related, by all that the asker may see or have computed with: exact only where that is all that leads
 * from one to the other, and otherwise lower.
 *
 * @param kinship the inbreeding coefficient F of young of the two, in [0, 1]
 * @param bySire from the lowest to the highest that it may be; absent where it depends on no sire that is one of several
 * @param ifUnknownAreSiblings what it would be if all unknown parents were full siblings of each other, the customary worst
 *     case; absent where all ancestry of the two is known
 * @param doubtfulSiresOf studbook numbers, of the two and their ancestors, whose sire is doubtful: the figure takes each as
 *     true; absent when none is
 * @param ifDoubtfulSiresUnknown what it would be if those sires were unknown; absent when there are none
 * @param ifClaimsHold what it would be if animals were one of which a node claims it, and nobody agreed yet: so the two are possibly
 *     linked; absent where nothing is claimed that would change it
 * @param convention {@code unrelated}: an unknown parent counts as unrelated to all, which understates kinship
 * @param commonAncestors studbook numbers, the nearest first; one of the two itself, where it is an ancestor of the other
 * @param throughAncestorsNotShown true where a figure rests on ancestors that are granted to be computed with and not to be seen;
 *     absent otherwise
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record KinshipView(
        Side animal,
        Side other,
        double kinship,
        @Nullable FigureRange bySire,
        @Nullable Double ifUnknownAreSiblings,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> doubtfulSiresOf,
        @Nullable Double ifDoubtfulSiresUnknown,
        @Nullable Double ifClaimsHold,
        String convention,
        List<String> commonAncestors,
        @Nullable Boolean throughAncestorsNotShown) {

    /**
     * One of the two.
     *
     * @param knownAncestry the share of its genome, in [0, 1], that traces to stated founders
     */
    public record Side(String number, double inbreedingCoefficient, double knownAncestry) {}
}
