package org.demebook.litter;

import java.util.List;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/**
 * A litter, for those who held its dam at the birth and for those who hold her now.
 *
 * @param dam studbook number
 * @param sire as it was stated for the litter; what was found out of one young later stands on that animal
 * @param young studbook numbers of the live-born, in order
 */
public record LitterView(
        UUID id,
        String dam,
        StatedSire sire,
        Origin origin,
        RoughDate born,
        int liveBorn,
        int stillborn,
        int unfertilised,
        int ovaFound,
        int malformedLive,
        int malformedStillborn,
        List<String> young,
        @Nullable String notes,
        long revision) {}
