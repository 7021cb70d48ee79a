package org.demebook.crossing;

import java.util.List;
import org.demebook.crossing.CrossingView.ToldForebear;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * An animal that this node adopted from one that is gone, and that has no keeper here yet.
 *
 * @param animal what it is called between nodes, {@code uuid@node}
 * @param from code of the node that is gone; its id where it has no seat any more
 * @param known whether it has a record in this register from before, which comes back to life with its next keeper
 * @param number studbook number, as it stands in that record or was told; absent where it has none and none was told: read it from what its
 *     keeper shows
 * @param sex absent where it was not told
 * @param born absent where it is unknown, or was not told
 * @param parents by number, as far as they were told
 */
@ShownTo(ShownTo.Whom.COORDINATORS)
public record AdoptedAnimalView(
        String animal,
        String from,
        boolean known,
        @Nullable String number,
        @Nullable Sex sex,
        @Nullable RoughDate born,
        List<ToldForebear> parents) {}
