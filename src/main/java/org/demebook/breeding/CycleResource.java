package org.demebook.breeding;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import java.time.LocalDate;
import java.util.List;
import org.demebook.breeding.Sires.CandidateSiresView;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Breeding")
class CycleResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Cycles cycles;

    @Inject
    Sires sires;

    @GET
    @Path("animals/{number}/due-window")
    @Operation(
            operationId = "getDueWindow",
            summary =
                    "The breeding cycle of a female that you hold: its signs, when a birth is due and why, what to do now",
            description = "Derived from what is recorded; onDay tells how it looked on another day than today.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, BAD_PARAMETER})
    public CycleView dueWindow(
            @RestPath String population, @RestPath String number, @QueryParam("onDay") @Nullable LocalDate onDay) {
        return cycles.of(signedIn.standing(population), number, onDay);
    }

    @GET
    @Path("due-windows")
    @Operation(
            operationId = "listDueWindows",
            summary = "The females in your collections whose young are awaited, the most urgent first",
            description =
                    "Those in labour, then by the expected day, then those of whom introductions alone tell no more"
                            + " than months, until the last of these months is over.")
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public List<CycleView> dueWindows(@RestPath String population, @QueryParam("onDay") @Nullable LocalDate onDay) {
        return cycles.awaited(signedIn.standing(population), onDay);
    }

    @GET
    @Path("animals/{number}/candidate-sires")
    @Operation(
            operationId = "listCandidateSires",
            summary = "The males that a litter of this dam may come from, the likeliest first, with their shares")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, BAD_PARAMETER})
    public CandidateSiresView candidateSires(
            @RestPath String population, @RestPath String number, @QueryParam("bornOn") @Nullable LocalDate bornOn) {
        return sires.candidates(signedIn.standing(population), number, bornOn);
    }
}
