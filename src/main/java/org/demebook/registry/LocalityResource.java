package org.demebook.registry;

import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.REVISION_MISSING;
import static org.demebook.problem.ProblemType.REVISION_OUTDATED;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.demebook.keeper.SignedIn;
import org.demebook.registry.Localities.StatedLocality;
import org.demebook.rest.Refuses;
import org.demebook.rest.Revision;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/animals/{number}/locality")
@Authenticated
@Tag(name = "Animals")
class LocalityResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Localities localities;

    @Inject
    Corrections corrections;

    @GET
    @Operation(
            operationId = "getLocality",
            summary = "What an animal's pedigree says of its locality: pure, mixed, or not established",
            description = "Computed from the claims of its ancestors. Of whom nothing is said, it is stated that they"
                    + " are of the population's locality.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER})
    public LocalityView locality(@RestPath String population, @RestPath String number) {
        return localities.of(signedIn.standing(population), number);
    }

    @PUT
    @Operation(operationId = "claimLocality", summary = "Claim a locality as it is known now (the holder)")
    @APIResponse(
            responseCode = "200",
            description = "The animal with its claim",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Registered.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, REVISION_MISSING, REVISION_OUTDATED
    })
    public Response claim(
            @RestPath String population,
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid StatedLocality stated) {
        var registered = corrections.locality(signedIn.standing(population), number, ifMatch, stated);
        return Revision.tagged(registered, registered.animal().revision());
    }
}
