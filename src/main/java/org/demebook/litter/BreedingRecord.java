package org.demebook.litter;

import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.notation.RoughDate;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;

/**
 * What was noted of a female before she gave birth. Kept by the rooms that note it; where none does, nothing is known.
 *
 * <p>Called within the transaction that registers a litter, with the population locked: answer from a few rows.
 */
public interface BreedingRecord {
    /**
     * The males that may have sired what she bore on that day, the likeliest first; with their shares, which sum to at
     * most 1. Those that she met too long ago for every published case are named with share 0. Empty: none is on record.
     */
    List<Mate> mates(UUID populationId, UUID damId, RoughDate born);

    /** What a birth on that day breaks or strains of what was noted of her. */
    List<Breach> check(Standing by, Custody dam, RoughDate born);

    /** Days from her post-ovulation shed to that birth; empty where no such shed was noted. */
    OptionalInt daysFromShed(UUID populationId, UUID damId, RoughDate born);
}
