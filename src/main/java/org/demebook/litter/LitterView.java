package org.demebook.litter;

import java.util.List;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.registry.StatedSire;
import org.demebook.registry.Twins;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A litter, for those who held its dam at the birth and for those who hold her now. Its counts are as {@link Outcome} says.
 *
 * @param dam studbook number
 * @param sire as it was stated for the litter, doubtful where the young were conceived long after he was gone; what was found out of one young later stands on that animal
 * @param young studbook numbers of the live-born, in order
 * @param twins those of them that came from one sac
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record LitterView(
        UUID id,
        String dam,
        StatedSire sire,
        Origin origin,
        RoughDate born,
        int liveBorn,
        int malformedLive,
        int stillborn,
        int malformedStillborn,
        int partDeveloped,
        int unfertilised,
        int infertile,
        int earlyDead,
        int ovaFound,
        List<String> young,
        List<Twins.Pair> twins,
        @Nullable String notes,
        long revision) {

    public Outcome outcome() {
        return new Outcome(
                liveBorn,
                malformedLive,
                stillborn,
                malformedStillborn,
                partDeveloped,
                unfertilised,
                infertile,
                earlyDead,
                ovaFound);
    }
}
