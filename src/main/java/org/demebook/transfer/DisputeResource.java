package org.demebook.transfer;

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
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Transfers")
class DisputeResource {
    /** A page of disputes. */
    @ShownTo(ShownTo.Whom.BOTH_SIDES)
    record DisputePage(List<DisputeView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Disputes disputes;

    @Inject
    Once once;

    @POST
    @Path("animals/{number}/disputes")
    @Operation(
            operationId = "disputeAnimal",
            summary = "Report an animal in a collection of yours although the register has it elsewhere",
            description =
                    "For whoever gave or received the animal in a transfer that stands or is done. Until the dispute"
                            + " is withdrawn, conceded or settled, the animal changes hands no more and counts for neither side.")
    @APIResponse(
            responseCode = "201",
            description = "The animal is in dispute",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DisputeView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NO_SUCH_TRANSFER,
        ANIMAL_MERGED,
        ANIMAL_IN_DISPUTE,
        NOTHING_TO_DISPUTE,
        NO_COLLECTION,
        NO_SUCH_COLLECTION,
        DATE_IN_FUTURE,
        ANIMAL_ELSEWHERE,
        NODE_FENCED
    })
    public Response report(@RestPath String population, @RestPath String number, @NotNull @Valid NewDispute report) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), report, () -> {
            var dispute = disputes.report(by, number, report);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/disputes/" + dispute.id()),
                    dispute.revision(),
                    dispute);
        });
    }

    @GET
    @Path("animals/{number}/disputes")
    @Operation(
            operationId = "listDisputesOfAnimal",
            summary = "The disputes over an animal that concern you, the latest first; all of them for a coordinator")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER})
    public List<DisputeView> ofAnimal(@RestPath String population, @RestPath String number) {
        return disputes.about(signedIn.standing(population), number);
    }

    @GET
    @Path("disputes")
    @Operation(
            operationId = "listDisputes",
            summary = "The disputes that concern you, the latest first; all of them for a coordinator")
    @APIResponse(
            responseCode = "200",
            description = "A page of disputes; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DisputePage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response list(
            @RestPath String population,
            @QueryParam("state") @Nullable String state,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return disputes.page(
                        signedIn.standing(population),
                        Parameters.word("state", state, DisputeState::parse),
                        Page.after(after),
                        Page.limit(limit))
                .response(uri);
    }

    @GET
    @Path("disputes/{dispute}")
    @Operation(operationId = "getDispute", summary = "One dispute that concerns you")
    @APIResponse(
            responseCode = "200",
            description = "The dispute",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DisputeView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_DISPUTE, BAD_PARAMETER})
    public Response dispute(@RestPath String population, @RestPath UUID dispute) {
        var view = disputes.get(signedIn.standing(population), dispute);
        return Revision.tagged(view, view.revision());
    }

    @POST
    @Path("disputes/{dispute}/withdrawal")
    @Operation(operationId = "withdrawDispute", summary = "Take a report back (the side that made it)")
    @APIResponse(
            responseCode = "200",
            description = "The dispute, withdrawn: the animal is where the register has it",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DisputeView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_DISPUTE, BAD_PARAMETER, NOT_ALLOWED, DISPUTE_ENDED})
    public Response withdraw(@RestPath String population, @RestPath UUID dispute, @NotNull @Valid Ending ending) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), ending, () -> answer(disputes.withdraw(by, dispute, ending)));
    }

    @POST
    @Path("disputes/{dispute}/concession")
    @Operation(
            operationId = "concedeDispute",
            summary =
                    "Agree that the animal is where it was reported (its holder by the register; of a loan, its owner)")
    @APIResponse(
            responseCode = "200",
            description = "The dispute, conceded: the animal is where it was reported",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DisputeView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_DISPUTE, BAD_PARAMETER, NOT_ALLOWED, DISPUTE_ENDED})
    public Response concede(@RestPath String population, @RestPath UUID dispute, @NotNull @Valid Ending ending) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), ending, () -> answer(disputes.concede(by, dispute, ending)));
    }

    @POST
    @Path("disputes/{dispute}/settlement")
    @Operation(operationId = "settleDispute", summary = "Decide for one of the two sides (a coordinator on neither)")
    @APIResponse(
            responseCode = "200",
            description = "The dispute, settled",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = DisputeView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_DISPUTE, BAD_PARAMETER, NOT_ALLOWED, DISPUTE_ENDED})
    public Response settle(@RestPath String population, @RestPath UUID dispute, @NotNull @Valid Settlement settlement) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), settlement, () -> answer(disputes.settle(by, dispute, settlement)));
    }

    private static Answer answer(DisputeView dispute) {
        return Answer.ok(dispute.revision(), dispute);
    }
}
