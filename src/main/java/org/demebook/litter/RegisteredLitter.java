package org.demebook.litter;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.demebook.problem.Finding;
import org.demebook.registry.AnimalView;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A litter that was saved.
 *
 * @param daysFromShed from the dam's post-ovulation shed to the birth; absent where no such shed was noted
 * @param young the animals that came into the register with it
 * @param warnings what is worth a second look
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record RegisteredLitter(
        LitterView litter,
        @Nullable Integer daysFromShed,
        List<AnimalView> young,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> warnings) {}
