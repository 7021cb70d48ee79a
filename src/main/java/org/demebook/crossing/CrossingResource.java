package org.demebook.crossing;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Page;
import org.demebook.rest.Parameters;
import org.demebook.rest.Refuses;
import org.demebook.rest.Revision;
import org.demebook.rest.ShownTo;
import org.demebook.transfer.Ending;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/crossings")
@Authenticated
@Tag(name = "Crossings")
class CrossingResource {
    /** A page of crossings. */
    @ShownTo(ShownTo.Whom.BOTH_SIDES)
    record CrossingPage(List<CrossingView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Crossings crossings;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listCrossings",
            summary = "What you give to keepers on other nodes, and what they give to you, the latest first")
    @APIResponse(
            responseCode = "200",
            description = "A page of crossings; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CrossingPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response list(
            @RestPath String population,
            @QueryParam("state") @Nullable String state,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return crossings
                .page(
                        signedIn.standing(population),
                        Parameters.word("state", state, CrossingState::parse),
                        Page.after(after),
                        Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(
            operationId = "offerAnimalElsewhere",
            summary = "Offer an animal to a keeper on another node (the holder)",
            description =
                    "It stays where it is until the offer is accepted there and your node has heard of it; then it is"
                            + " released at once, and with neither of you until the other node has taken it. Nobody here"
                            + " can know whether there is a keeper of that name: an offer to nobody runs out.")
    @APIResponse(
            responseCode = "201",
            description = "The animal is offered",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CrossingView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        ANIMAL_DEAD,
        ANIMAL_MERGED,
        ANIMAL_IN_DISPUTE,
        ALREADY_IN_TRANSFER,
        ANIMAL_ELSEWHERE,
        GRAVID_FEMALE,
        ON_LOAN,
        DATE_IN_FUTURE,
        NO_SUCH_NODE,
        NODE_FENCED
    })
    public Response offer(@RestPath String population, @NotNull @Valid NewCrossing crossing) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), crossing, () -> {
            var offered = crossings.offer(by, crossing);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/crossings/" + offered.id()),
                    offered.revision(),
                    offered);
        });
    }

    @GET
    @Path("{crossing}")
    @Operation(operationId = "getCrossing", summary = "One crossing of yours")
    @APIResponse(
            responseCode = "200",
            description = "The crossing",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CrossingView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CROSSING, BAD_PARAMETER})
    public Response crossing(@RestPath String population, @RestPath UUID crossing) {
        var view = crossings.get(signedIn.standing(population), crossing);
        return Revision.tagged(view, view.revision());
    }

    @POST
    @Path("{crossing}/acceptance")
    @Operation(
            operationId = "acceptCrossing",
            summary =
                    "Accept an offer from another node: the animal comes when that node has released it (the receiver)")
    @APIResponse(
            responseCode = "200",
            description = "The crossing, accepted",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CrossingView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_CROSSING,
        BAD_PARAMETER,
        NOT_ALLOWED,
        CROSSING_ENDED,
        NO_COLLECTION,
        NO_SUCH_COLLECTION,
        NODE_FENCED
    })
    public Response accept(
            @RestPath String population, @RestPath UUID crossing, @NotNull @Valid CrossingAcceptance acceptance) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), acceptance, () -> answer(crossings.accept(by, crossing, acceptance)));
    }

    @POST
    @Path("{crossing}/refusal")
    @Operation(operationId = "refuseCrossing", summary = "Refuse an offer from another node (the receiver)")
    @APIResponse(
            responseCode = "200",
            description = "The crossing, refused",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CrossingView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CROSSING, BAD_PARAMETER, NOT_ALLOWED, CROSSING_ENDED, NODE_FENCED})
    public Response refuse(@RestPath String population, @RestPath UUID crossing) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> answer(crossings.refuse(by, crossing)));
    }

    @POST
    @Path("{crossing}/withdrawal")
    @Operation(operationId = "withdrawCrossing", summary = "Take an offer to another node back (the giver)")
    @APIResponse(
            responseCode = "200",
            description = "The crossing, withdrawn",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CrossingView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_CROSSING,
        BAD_PARAMETER,
        NOT_ALLOWED,
        CROSSING_ENDED,
        ALREADY_RELEASED,
        NODE_FENCED
    })
    public Response withdraw(@RestPath String population, @RestPath UUID crossing, @NotNull @Valid Ending ending) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), ending, () -> answer(crossings.withdraw(by, crossing, ending)));
    }

    private static Answer answer(CrossingView crossing) {
        return Answer.ok(crossing.revision(), crossing);
    }
}
