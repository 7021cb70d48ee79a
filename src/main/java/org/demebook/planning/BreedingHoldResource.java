package org.demebook.planning;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NOT_ON_HOLD;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/animals/{number}/breeding-hold")
@Authenticated
@Tag(name = "Pairings")
class BreedingHoldResource {
    @Inject
    SignedIn signedIn;

    @Inject
    BreedingHolds holds;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "getBreedingHold",
            summary = "Whether an animal is on hold",
            description = "An animal on hold is not proposed as a partner. One without a sire is, until it is lifted.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER})
    public BreedingHoldView hold(@RestPath String population, @RestPath String number) {
        return holds.get(signedIn.standing(population), number);
    }

    @PUT
    @Operation(
            operationId = "setBreedingHold",
            summary = "Set an animal on hold (its holder, coordinators)",
            description = "The last word holds; the same word again changes nothing.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_ALLOWED, ANIMAL_DEAD})
    public BreedingHoldView set(@RestPath String population, @RestPath String number, @NotNull @Valid HoldWord word) {
        return holds.set(signedIn.standing(population), number, word);
    }

    @POST
    @Path("lifting")
    @Operation(
            operationId = "liftBreedingHold",
            summary = "Let an animal breed again (coordinators; who set it on hold)",
            description = "The hold of an animal without a sire is a coordinator's to lift.")
    @APIResponse(
            responseCode = "200",
            description = "It is not on hold",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = BreedingHoldView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_ALLOWED, NOT_ON_HOLD})
    public Response lift(@RestPath String population, @RestPath String number, @NotNull @Valid HoldWord word) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), word, () -> Answer.ok(null, holds.lift(by, number, word)));
    }
}
