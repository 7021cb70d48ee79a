package org.demebook.reading;

import java.util.List;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * What the counts of a litter tell, and what they do not: never a cause.
 *
 * @param daysFromShed from the dam's post-ovulation shed to the birth; absent where no such shed was noted
 * @param littersComparedWith so many others it was compared with; below {@value #FEWEST_LITTERS} they are not used, and
 *     one in ten is taken as usual (common practice, no source), each ovum on its own
 * @param losses each kind of loss that the litter could have
 * @param worthChecking where a whole litter is unusual; empty otherwise
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record LitterReading(
        @Nullable Integer daysFromShed, int littersComparedWith, List<LossReading> losses, List<String> worthChecking) {
    static final int FEWEST_LITTERS = 10;
}
