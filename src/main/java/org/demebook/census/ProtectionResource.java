package org.demebook.census;

import static org.demebook.problem.ProblemType.NOT_ALLOWED;
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
import org.demebook.rest.Refuses;
import org.demebook.rest.Revision;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Counts")
class ProtectionResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Protection protection;

    @GET
    @Path("count-rules")
    @Operation(
            operationId = "getCountRules",
            summary = "The parameters that protect published counts (coordinators)",
            description = "They are not published: who knows them can undo some of the protection.")
    @APIResponse(
            responseCode = "200",
            description = "The parameters",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CountRulesView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED})
    public Response rules(@RestPath String population) {
        var view = protection.rules(signedIn.standing(population));
        return Revision.tagged(view, view.revision());
    }

    @PUT
    @Path("count-rules")
    @Operation(
            operationId = "setCountRules",
            summary = "Set the parameters that protect published counts (coordinators)")
    @APIResponse(
            responseCode = "200",
            description = "The parameters as they are from the next release on",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CountRulesView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, REVISION_MISSING, REVISION_OUTDATED})
    public Response set(
            @RestPath String population,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid NewCountRules rules) {
        var view = protection.set(signedIn.standing(population), ifMatch, rules);
        return Revision.tagged(view, view.revision());
    }

    @GET
    @Path("count-waiver")
    @Operation(
            operationId = "getCountWaiver",
            summary = "Whether you do without the protection of your own numbers in published counts")
    @Refuses(NO_SUCH_POPULATION)
    public CountWaiverView waiver(@RestPath String population) {
        return protection.waiver(signedIn.standing(population));
    }

    @PUT
    @Path("count-waiver")
    @Operation(
            operationId = "waiveCountProtection",
            summary = "Do without the protection of your own numbers in published counts, or take that back",
            description = "From the next release on. What was told stays told.")
    @Refuses(NO_SUCH_POPULATION)
    public CountWaiverView waive(@RestPath String population, @NotNull @Valid CountWaiverView waiver) {
        return protection.waive(signedIn.standing(population), waiver.waived());
    }
}
