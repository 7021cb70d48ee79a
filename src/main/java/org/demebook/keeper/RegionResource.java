package org.demebook.keeper;

import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_COLLECTION;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.NO_SUCH_REGION;
import static org.demebook.problem.ProblemType.REGION_IN_USE;
import static org.demebook.problem.ProblemType.REGION_NAMES_CLASH;
import static org.demebook.problem.ProblemType.REVISION_MISSING;
import static org.demebook.problem.ProblemType.REVISION_OUTDATED;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
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
@Tag(name = "Keepers")
class RegionResource {
    /** @param region one of the population's; absent to state none */
    record StatedRegion(
            @Nullable @Size(max = NewRegions.LONGEST) String region) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Regions regions;

    @GET
    @Path("regions")
    @Operation(operationId = "getRegions", summary = "The regions by which the population is counted")
    @APIResponse(
            responseCode = "200",
            description = "The names that were fixed; none where there is no table of regions",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = RegionsView.class)))
    @Refuses(NO_SUCH_POPULATION)
    public Response regions(@RestPath String population) {
        var view = regions.fixed(signedIn.standing(population).populationId());
        return Revision.tagged(view, view.revision());
    }

    @PUT
    @Path("regions")
    @Operation(
            operationId = "fixRegions",
            summary = "Fix the regions by which the population is counted (coordinators)",
            description = "Large parts of where keepers live. With none, published counts have no table of regions.")
    @APIResponse(
            responseCode = "200",
            description = "The regions as they are now",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = RegionsView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, REVISION_MISSING, REVISION_OUTDATED, REGION_IN_USE, REGION_NAMES_CLASH})
    public Response fix(
            @RestPath String population,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid NewRegions names) {
        var view = regions.fix(signedIn.standing(population), ifMatch, names);
        return Revision.tagged(view, view.revision());
    }

    @GET
    @Path("regions/distances")
    @Operation(operationId = "getRegionDistances", summary = "How far apart the population's regions are")
    @APIResponse(
            responseCode = "200",
            description = "What coordinators stated; of a pair of regions that is not there nothing is known",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = RegionDistances.class)))
    @Refuses(NO_SUCH_POPULATION)
    public Response distances(@RestPath String population) {
        var populationId = signedIn.standing(population).populationId();
        return Revision.tagged(regions.distances(populationId), regions.revisionOfDistances(populationId));
    }

    @PUT
    @Path("regions/distances")
    @Operation(
            operationId = "stateRegionDistances",
            summary =
                    "State how far apart the population's regions are, and where a border lies between (coordinators)",
            description = "All pairs of which anything is known. Plans use them with the terms that keepers state.")
    @APIResponse(
            responseCode = "200",
            description = "The distances as they are now",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = RegionDistances.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, REVISION_MISSING, REVISION_OUTDATED, NO_SUCH_REGION, REGION_NAMES_CLASH})
    public Response state(
            @RestPath String population,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid RegionDistances distances) {
        var by = signedIn.standing(population);
        var view = regions.state(by, ifMatch, distances);
        return Revision.tagged(view, regions.revisionOfDistances(by.populationId()));
    }

    @PUT
    @Path("collections/{collection}/region")
    @Operation(
            operationId = "stateRegion",
            summary = "State the region of a collection of yours, or that you state none",
            description = "Others see it, and published counts use it, only as far as you grant coarse-place.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_COLLECTION, NO_SUCH_REGION})
    public CollectionView state(
            @RestPath String population, @RestPath UUID collection, @NotNull @Valid StatedRegion stated) {
        return regions.state(signedIn.standing(population), collection, stated.region());
    }
}
