package org.demebook.registry;

import static org.demebook.problem.ProblemType.CODE_TAKEN;
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
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.demebook.rest.Revision;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations")
@Authenticated
@Tag(name = "Populations")
class PopulationResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Populations populations;

    @Inject
    Once once;

    @GET
    @Operation(operationId = "listPopulations", summary = "The populations that you belong to")
    @Refuses
    public List<PopulationView> populations() {
        return populations.of(signedIn.asker());
    }

    @POST
    @Operation(operationId = "foundPopulation", summary = "Found a population and coordinate it")
    @APIResponse(
            responseCode = "201",
            description = "The population is founded",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PopulationView.class)))
    @Refuses(CODE_TAKEN)
    public Response found(@NotNull @Valid NewPopulation population) {
        var by = signedIn.asker();
        return once.answer(by.keeperId(), population, () -> {
            var founded = populations.found(by, population);
            return Answer.created(URI.create("/api/v1/populations/" + founded.code()), founded.revision(), founded);
        });
    }

    @GET
    @Path("{population}")
    @Operation(operationId = "getPopulation", summary = "One population")
    @APIResponse(
            responseCode = "200",
            description = "The population",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PopulationView.class)))
    @Refuses(NO_SUCH_POPULATION)
    public Response population(@RestPath String population) {
        var view = populations.get(signedIn.standing(population));
        return Revision.tagged(view, view.revision());
    }

    @PUT
    @Path("{population}")
    @Operation(operationId = "describePopulation", summary = "Describe a population anew (coordinators)")
    @APIResponse(
            responseCode = "200",
            description = "The population as it is described now",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = PopulationView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, REVISION_MISSING, REVISION_OUTDATED})
    public Response describe(
            @RestPath String population,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid NewPopulation description) {
        var view = populations.describe(signedIn.standing(population), ifMatch, description);
        return Revision.tagged(view, view.revision());
    }
}
