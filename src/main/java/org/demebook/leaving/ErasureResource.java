package org.demebook.leaving;

import static org.demebook.problem.ProblemType.LEAVING_IN_THE_WAY;
import static org.demebook.problem.ProblemType.NAME_NOT_REPEATED;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}/erasure")
@Authenticated
@Tag(name = "Keepers")
class ErasureResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Erasures erasures;

    @GET
    @Operation(
            operationId = "previewErasure",
            summary = "What goes and what stays when you leave a population for good, and what is in the way")
    @Refuses(NO_SUCH_POPULATION)
    public ErasureView preview(@RestPath String population) {
        return erasures.preview(signedIn.standing(population));
    }

    // no Idempotency-Key: an answer kept for somebody who is gone would be a trace of them
    @POST
    @Operation(
            operationId = "erase",
            summary = "Leave a population and take your own out of it; cannot be taken back",
            description =
                    "Take your archive first (my-archive). Name, texts and photographs go; your animals stay, each"
                            + " under a holder of its own without a name, so that nobody's pedigree and figures change."
                            + " Sent again, it finds nobody who belongs to the population.")
    @APIResponse(responseCode = "204", description = "Nothing of yours is left that says who you are")
    @Refuses({NO_SUCH_POPULATION, NAME_NOT_REPEATED, LEAVING_IN_THE_WAY})
    public Response erase(@RestPath String population, @NotNull @Valid NewErasure erasure) {
        var asker = signedIn.asker();
        erasures.erase(asker, signedIn.standing(population), erasure);
        signedIn.forget(asker);
        return Response.noContent().build();
    }
}
