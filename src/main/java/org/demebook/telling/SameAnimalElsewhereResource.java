package org.demebook.telling;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.CLAIM_ALREADY_ANSWERED;
import static org.demebook.problem.ProblemType.CLAIM_NOT_POSSIBLE;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NODE_FENCED;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NOT_SHARED;
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
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/federation/same-animal-claims")
@Authenticated
@Tag(name = "Crossings")
class SameAnimalElsewhereResource {
    @Inject
    SignedIn signedIn;

    @Inject
    SameAnimalsElsewhere claims;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listSameAnimalClaimsElsewhere",
            summary = "Claims that animals of yours and of other nodes are one, the latest first")
    @Refuses({NO_SUCH_POPULATION})
    public List<SameAnimalElsewhereView> claims(@RestPath String population) {
        return claims.about(signedIn.standing(population));
    }

    @POST
    @Operation(
            operationId = "claimSameAnimalElsewhere",
            summary = "Claim that an animal of yours is one that another node registered",
            description =
                    "Every node of the population reads the claim, by what the two are called between nodes. From when"
                            + " the keeper of the other has confirmed it on their node, figures count one animal; both"
                            + " numbers stay.")
    @APIResponse(
            responseCode = "201",
            description = "The claim; the keeper of the other confirms it on their node",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = SameAnimalElsewhereView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        NOT_SHARED,
        CLAIM_NOT_POSSIBLE,
        CLAIM_ALREADY_ANSWERED,
        NODE_FENCED
    })
    public Response claim(@RestPath String population, @NotNull @Valid NewSameAnimalElsewhere claim) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), claim, () -> {
            var made = claims.claim(by, claim);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/federation/same-animal-claims"), null, made);
        });
    }

    @POST
    @Path("{claim}/confirmation")
    @Operation(
            operationId = "confirmSameAnimalElsewhere",
            summary = "Confirm what another node claims of an animal of yours")
    @APIResponse(
            responseCode = "200",
            description = "The two count as one animal now",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = SameAnimalElsewhereView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_CLAIM,
        BAD_PARAMETER,
        NOT_YOUR_ANIMAL,
        CLAIM_ALREADY_ANSWERED,
        CLAIM_NOT_POSSIBLE,
        NODE_FENCED
    })
    public Response confirm(@RestPath String population, @RestPath UUID claim) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> Answer.ok(null, claims.confirm(by, claim)));
    }

    @POST
    @Path("{claim}/reversal")
    @Operation(
            operationId = "reverseSameAnimalElsewhere",
            summary = "Take back what you claimed, or confirmed, of an animal of yours and one of another node")
    @APIResponse(
            responseCode = "200",
            description = "The two count as two animals",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = SameAnimalElsewhereView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_CLAIM,
        BAD_PARAMETER,
        NOT_ALLOWED,
        CLAIM_ALREADY_ANSWERED,
        CLAIM_NOT_POSSIBLE,
        NODE_FENCED
    })
    public Response reverse(@RestPath String population, @RestPath UUID claim) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> Answer.ok(null, claims.reverse(by, claim)));
    }
}
