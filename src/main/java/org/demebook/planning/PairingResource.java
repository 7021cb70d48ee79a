package org.demebook.planning;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_CANDIDATES;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.ON_HOLD;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.demebook.keeper.SignedIn;
import org.demebook.planning.Planner.Question;
import org.demebook.problem.Refusal;
import org.demebook.rest.Page;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/pairings")
@Authenticated
@Tag(name = "Pairings")
class PairingResource {
    private static final int MOST_YOUNG = 30;

    @Inject
    SignedIn signedIn;

    @Inject
    Planner planner;

    @GET
    @Operation(
            operationId = "suggestPairings",
            summary = "Which animals should breed next, and how many young to keep",
            description =
                    "Living animals of known and opposite sex, old enough, rested, not on hold, in different collections, whose keepers"
                            + " grant number and parentage to be read for it. Each pair is looked at by itself: what is best for a"
                            + " whole season, and how many litters of each animal, is planned as one (season-drafts).")
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        ANIMAL_DEAD,
        NO_CANDIDATES,
        ON_HOLD,
        BAD_PARAMETER
    })
    public PairingsView pairings(
            @RestPath String population,
            @Parameter(description = "An animal of yours for which partners are wanted") @QueryParam("for") @Nullable
                    String animal,
            @Parameter(description = "No young more inbred than this, 0 to 1; 0.125 when nothing is said")
                    @QueryParam("maximumInbreeding")
                    @Nullable
                    String maximumInbreeding,
            @Parameter(description = "Up to how many young kept are looked at, 1 to 30; 8 when nothing is said")
                    @QueryParam("young")
                    @Nullable
                    Integer young,
            @Parameter(
                            description =
                                    "The day on which they are put together: then age and quarantine are counted to it; today when nothing is said")
                    @QueryParam("pairOn")
                    @Nullable
                    LocalDate pairOn,
            @QueryParam("limit") @Nullable Integer limit) {
        var by = signedIn.standing(population);
        var question = Question.of(maximum(maximumInbreeding), young(young), Page.limit(limit), pairOn);
        return animal == null ? planner.pairings(by, question) : planner.partners(by, animal, question);
    }

    private static @Nullable BigDecimal maximum(@Nullable String asked) {
        if (asked == null) {
            return null;
        }
        try {
            var value = new BigDecimal(asked);
            if (value.signum() >= 0 && value.compareTo(BigDecimal.ONE) <= 0) {
                return value;
            }
        } catch (NumberFormatException notANumber) {
            // told below, with those that are out of range
        }
        throw new Refusal(BAD_PARAMETER, "maximumInbreeding is %s; give a number from 0 to 1.".formatted(asked));
    }

    private static @Nullable Integer young(@Nullable Integer asked) {
        if (asked != null && (asked < 1 || asked > MOST_YOUNG)) {
            throw new Refusal(BAD_PARAMETER, "young is %d; ask for 1 to %d.".formatted(asked, MOST_YOUNG));
        }
        return asked;
    }
}
