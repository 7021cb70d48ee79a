package org.demebook.consent;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.NO_SUCH_COLLECTION;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Page;
import org.demebook.rest.Refuses;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Consent")
class SharingResource {
    /** A page of what others saw. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record DisclosurePage(
            List<DisclosureView> items, @Nullable String next) {}

    /**
     * @param choice private, compute-only, pairing-with-members or open-pedigree
     * @param node code of another node, for whose members alone it is chosen; nothing: for everybody here, and for the public
     */
    record StatedSharing(
            @NotNull ReadyChoice choice,

            @Nullable
            @Pattern(regexp = "[A-Z1-9][A-Z0-9]{0,3}", message = "is a node's code: 1 to 4 letters or digits, like U")
            String node) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Choices choices;

    @Inject
    Disclosures disclosures;

    @GET
    @Path("collections/{collection}/sharing")
    @Operation(operationId = "getSharing", summary = "What a collection of yours shares by a ready choice")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_COLLECTION})
    public SharingView sharing(@RestPath String population, @RestPath UUID collection) {
        return choices.sharing(signedIn.standing(population), collection);
    }

    @PUT
    @Path("collections/{collection}/sharing")
    @Operation(
            operationId = "chooseSharing",
            summary = "Share by a ready choice, in place of the earlier one; grants written by hand stay",
            description =
                    "private ends what an earlier choice granted, and without a node what was chosen for other nodes too."
                            + " Nothing is shared that was not chosen.")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_COLLECTION})
    public SharingView choose(
            @RestPath String population, @RestPath UUID collection, @NotNull @Valid StatedSharing sharing) {
        var by = signedIn.standing(population);
        return sharing.node() == null
                ? choices.choose(by, collection, sharing.choice())
                : choices.chooseForNode(by, collection, sharing.choice(), sharing.node());
    }

    @GET
    @Path("disclosures")
    @Operation(
            operationId = "listDisclosures",
            summary = "Who saw what of your collections, on which of your grants, the latest day first")
    @APIResponse(
            responseCode = "200",
            description = "A page of disclosures; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DisclosurePage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response disclosures(
            @RestPath String population,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return disclosures
                .page(signedIn.standing(population), Page.after(after), Page.limit(limit))
                .response(uri);
    }
}
