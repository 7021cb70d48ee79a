package org.demebook.rearing;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Care records")
class RearingResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Rearing rearing;

    @GET
    @Path("animals/{number}/growth")
    @Operation(
            operationId = "getGrowth",
            summary = "How an animal gains, beside its siblings (who holds it, or wrote of it)")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL})
    public Growth growth(@RestPath String population, @RestPath String number) {
        return rearing.growth(signedIn.standing(population), number);
    }

    @GET
    @Path("animals/{number}/readiness")
    @Operation(
            operationId = "getReadiness",
            summary = "Whether a young may leave, and when it is expected to (who holds it, or wrote of it)",
            description = "Each condition with its reason; the figures are those of the population's profile. With on"
                    + " the answer is about another day than today.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, BAD_PARAMETER})
    public LeavingView readiness(
            @RestPath String population, @RestPath String number, @QueryParam("on") @Nullable LocalDate on) {
        return rearing.readiness(signedIn.standing(population), number, on);
    }

    @GET
    @Path("animals/{number}/tests")
    @Operation(
            operationId = "listTestsThatCount",
            summary = "The latest test for each agent, and until when it counts (who holds it, or wrote of it)",
            description = "As one looks at them before a pairing. With on the answer is about another day than today.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, BAD_PARAMETER})
    public List<CountedTest> tests(
            @RestPath String population, @RestPath String number, @QueryParam("on") @Nullable LocalDate on) {
        return rearing.tests(signedIn.standing(population), number, on);
    }

    @GET
    @Path("litters/{litter}/rearing")
    @Operation(
            operationId = "getLitterBoard",
            summary = "The young of a litter side by side: sheds, meals, masses, who is behind, who may leave",
            description = "For those who see the litter; of each young, what they see of its care.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_LITTER, BAD_PARAMETER})
    public LitterBoard board(@RestPath String population, @RestPath UUID litter) {
        return rearing.board(signedIn.standing(population), litter);
    }
}
