package org.demebook.programme;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.jspecify.annotations.Nullable;

/** The parameters of an outlook, from a draft or from a plan. */
final class OutlookAsked {
    @Parameter(description = "How many seasons to look ahead, 1 to 30; 10 when nothing is said")
    @QueryParam("seasons")
    @Nullable
    Integer seasons;

    @Parameter(description = "Years from one season to the next, 0.25 to 5; 1 when nothing is said")
    @QueryParam("yearsBetween")
    @Nullable
    Double yearsBetween;

    @Parameter(description = "Gene diversity that is not to be lost, 0.01 to 1")
    @QueryParam("target")
    @Nullable
    Double target;

    @Parameter(
            description =
                    "Until what age animals breed, in years; what the population's profile says when nothing is said")
    @QueryParam("breedsUntilAge")
    @Nullable
    Double breedsUntilAge;

    @Parameter(description = "Litters in each season after this one; as many as in the plan when nothing is said")
    @QueryParam("litters")
    @Nullable
    Integer litters;

    @Parameter(description = "Animals that can be kept; as many as are alive when nothing is said")
    @QueryParam("places")
    @Nullable
    Integer places;

    @Parameter(description = "How many new founders are held against none, 1 to 20; 1 when nothing is said")
    @QueryParam("founders")
    @Nullable
    Integer founders;

    /** Refuses with BAD_PARAMETER what is out of its range. */
    OutlookQuestion question() {
        return OutlookQuestion.of(seasons, yearsBetween, target, breedsUntilAge, litters, places, founders);
    }
}
