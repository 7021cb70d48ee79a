package org.demebook.rearing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.notation.RoughDate;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * The young of a litter side by side, as far as the asker sees their care.
 *
 * @param on the day that it is about
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record LitterBoard(UUID litter, RoughDate born, LocalDate on, List<BoardRow> young) {
    /**
     * One young.
     *
     * @param animal studbook number
     * @param held it lives in a collection of the asker's
     * @param mealsInARow taken without help, one after the other, up to the last
     * @param place the tub or rack it was moved to last
     * @param behind why it is behind its siblings; empty when it is not, or too little is known
     * @param missing the names of the conditions that are not met, or not known to be
     */
    public record BoardRow(
            String animal,
            boolean alive,
            boolean held,
            int sheds,
            int meals,
            int mealsInARow,
            @Nullable LocalDate lastMealOn,

            @Schema(
                    implementation = String.class,
                    enumeration = {"taken", "assisted", "refused"})
            Meal.@Nullable Outcome lastMeal,

            @Nullable LocalDate lastWeighedOn,
            @Nullable BigDecimal lastGrams,
            @Nullable String place,
            List<String> behind,
            boolean ready,
            List<String> missing,
            @Nullable LeavingWindow expected) {}
}
