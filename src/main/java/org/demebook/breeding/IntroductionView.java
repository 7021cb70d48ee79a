package org.demebook.breeding;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.problem.Finding;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * One male put together with one female.
 *
 * @param female studbook number
 * @param male studbook number
 * @param untilOn last day together; absent while they are
 * @param withdrawn it never took place; it counts for nothing
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record IntroductionView(
        UUID id,
        String female,
        String male,
        LocalDate fromOn,
        @Nullable LocalDate untilOn,
        boolean withdrawn,
        @Nullable String notes,
        long revision) {

    /**
     * An introduction that was saved.
     *
     * @param warnings what is worth a second look
     */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    public record RecordedIntroduction(
            IntroductionView introduction,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> warnings) {}
}
