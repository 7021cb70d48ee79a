package org.demebook.programme;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;

import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * What is asked of the years to come. Of what nobody says: ten seasons of a year each, as many litters as the plan has, as many places as there are animals.
 *
 * @param target of gene diversity, if there is one: there is no usual one
 * @param breedsUntilAge in years; null for what the population's profile says
 * @param litters in each season after this one; null for as many as in the plan
 * @param places animals that can be kept; null for as many as are alive
 * @param founders whose worth is asked, one or more
 */
public record OutlookQuestion(
        int seasons,
        double yearsBetween,
        @Nullable Double target,
        @Nullable Double breedsUntilAge,
        @Nullable Integer litters,
        @Nullable Integer places,
        int founders) {
    private static final int MOST_SEASONS = 30;
    private static final int MOST_ANIMALS = 5_000;

    /** Refuses with BAD_PARAMETER what is out of its range. */
    public static OutlookQuestion of(
            @Nullable Integer seasons,
            @Nullable Double yearsBetween,
            @Nullable Double target,
            @Nullable Double breedsUntilAge,
            @Nullable Integer litters,
            @Nullable Integer places,
            @Nullable Integer founders) {
        return new OutlookQuestion(
                (int) within("seasons", seasons, 10, 1, MOST_SEASONS),
                within("yearsBetween", yearsBetween, 1, .25, 5),
                target == null ? null : within("target", target, 1, .01, 1),
                breedsUntilAge == null ? null : within("breedsUntilAge", breedsUntilAge, 1, 1, 100),
                litters == null ? null : (int) within("litters", litters, 1, 0, MOST_ANIMALS),
                places == null ? null : (int) within("places", places, 1, 1, MOST_ANIMALS),
                (int) within("founders", founders, 1, 1, 20));
    }

    private static double within(String name, @Nullable Number asked, double usual, double least, double most) {
        double value = asked == null ? usual : asked.doubleValue();
        if (!(value >= least && value <= most)) {
            throw new Refusal(
                    BAD_PARAMETER, "%s is %s; say a number from %s to %s.".formatted(name, asked, least, most));
        }
        return value;
    }
}
