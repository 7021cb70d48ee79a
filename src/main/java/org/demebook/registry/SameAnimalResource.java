package org.demebook.registry;

import static org.demebook.problem.ProblemType.ANIMAL_ELSEWHERE;
import static org.demebook.problem.ProblemType.CLAIM_ALREADY_ANSWERED;
import static org.demebook.problem.ProblemType.CLAIM_NOT_POSSIBLE;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NODE_FENCED;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_CLAIM;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.registry.SameAnimalClaims.ClaimView;
import org.demebook.registry.SameAnimalClaims.NewClaim;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Animals")
class SameAnimalResource {
    @Inject
    SignedIn signedIn;

    @Inject
    SameAnimalClaims claims;

    @Inject
    Once once;

    @GET
    @Path("animals/{number}/same-animal-claims")
    @Operation(operationId = "listSameAnimalClaims", summary = "Claims that this and another record are one animal")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER})
    public List<ClaimView> claims(@RestPath String population, @RestPath String number) {
        return claims.about(signedIn.standing(population), number);
    }

    @POST
    @Path("animals/{number}/same-animal-claims")
    @Operation(operationId = "claimSameAnimal", summary = "Claim that this animal of yours and another record are one")
    @APIResponse(
            responseCode = "201",
            description = "The claim; the other keeper confirms it",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ClaimView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        CLAIM_NOT_POSSIBLE,
        ANIMAL_ELSEWHERE,
        NODE_FENCED
    })
    public Response claim(@RestPath String population, @RestPath String number, @NotNull @Valid NewClaim claim) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), claim, () -> {
            var made = claims.claim(by, number, claim.other(), claim.evidence());
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/animals/" + number + "/same-animal-claims"),
                    made.revision(),
                    made);
        });
    }

    @POST
    @Path("same-animal-claims/{claim}/confirmation")
    @Operation(operationId = "confirmSameAnimal", summary = "Confirm a claim about an animal of yours")
    @APIResponse(
            responseCode = "200",
            description = "The two records are one animal now",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ClaimView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_CLAIM,
        NOT_YOUR_ANIMAL,
        CLAIM_ALREADY_ANSWERED,
        CLAIM_NOT_POSSIBLE,
        ANIMAL_ELSEWHERE,
        NODE_FENCED
    })
    public Response confirm(@RestPath String population, @RestPath UUID claim) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> {
            var confirmed = claims.confirm(by, claim);
            return Answer.ok(confirmed.revision(), confirmed);
        });
    }

    @POST
    @Path("same-animal-claims/{claim}/reversal")
    @Operation(operationId = "reverseSameAnimal", summary = "Refuse a claim, or separate two merged records again")
    @APIResponse(
            responseCode = "200",
            description = "The two records are two animals",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ClaimView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CLAIM})
    public Response reverse(@RestPath String population, @RestPath UUID claim) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> {
            var reversed = claims.reverse(by, claim);
            return Answer.ok(reversed.revision(), reversed);
        });
    }
}
