package org.demebook.ancestry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.demebook.notation.Sex;
import org.demebook.registry.StatedSire;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Where an animal comes from, by numbers alone, and by what the asker may see or have computed with.
 *
 * @param animal itself, as generation 0
 * @param generations how far back the ancestors are listed; the figures look at all that is known
 * @param inbreedingCoefficient F, in [0, 1]
 * @param inbreedingBySire from the lowest to the highest that F may be; absent where it depends on no sire that is one of
 *     several
 * @param inbreedingIfUnknownAreSiblings what F would be if all unknown parents were full siblings of each other, the
 *     customary worst case; absent where all ancestry is known
 * @param doubtfulSiresOf studbook numbers, of the animal and all its ancestors, whose sire is doubtful: the figures take each
 *     as true; absent when none is
 * @param inbreedingIfDoubtfulSiresUnknown what F would be if those sires were unknown; absent when there are none
 * @param knownAncestry the share of its genome, in [0, 1], that traces to stated founders
 * @param convention {@code unrelated}: an unknown parent counts as unrelated to all, which understates F
 * @param founders those that are shown, the largest contribution first
 * @param unnamedContribution what the founders' contributions leave to 1: genes lost at a parent that nobody knows, or
 *     of a founder that is not shown
 * @param ancestors those that are shown, each once, the nearest generation first
 * @param throughAncestorsNotShown true where a figure rests on ancestors that are granted to be computed with and not to be seen;
 *     absent otherwise
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record AncestryView(
        Ancestor animal,
        int generations,
        double inbreedingCoefficient,
        @Nullable FigureRange inbreedingBySire,
        @Nullable Double inbreedingIfUnknownAreSiblings,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> doubtfulSiresOf,
        @Nullable Double inbreedingIfDoubtfulSiresUnknown,
        double knownAncestry,
        String convention,
        List<Contribution> founders,
        double unnamedContribution,
        List<Ancestor> ancestors,
        @Nullable Boolean throughAncestorsNotShown) {

    /**
     * @param born absent when unknown
     * @param dam studbook number; absent when unknown
     * @param generation 1 for a parent, 2 for a grandparent …; the nearest, where it stands in several
     * @param inbreedingCoefficient F, in [0, 1]
     * @param knownAncestry the share of its genome, in [0, 1], that traces to stated founders
     */
    public record Ancestor(
            String number,
            Sex sex,
            @Nullable String born,
            boolean alive,
            @Nullable String dam,
            StatedSire sire,
            int generation,
            double inbreedingCoefficient,
            double knownAncestry) {}

    /**
     * The share of a founder's genes.
     *
     * @param animal studbook number
     * @param contribution above 0, at most 1
     */
    public record Contribution(String animal, double contribution) {}
}
