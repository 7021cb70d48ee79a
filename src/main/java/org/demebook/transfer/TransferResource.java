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

@Path("/api/v1/populations/{population}/transfers")
@Authenticated
@Tag(name = "Transfers")
class TransferResource {
    /** A page of transfers. */
    @ShownTo(ShownTo.Whom.BOTH_SIDES)
    record TransferPage(List<TransferView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Transfers transfers;

    @Inject
    Once once;

    @GET
    @Operation(operationId = "listTransfers", summary = "What you give and what you receive, the latest first")
    @APIResponse(
            responseCode = "200",
            description = "A page of transfers; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = TransferPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response list(
            @RestPath String population,
            @QueryParam("state") @Nullable String state,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return transfers
                .page(
                        signedIn.standing(population),
                        Parameters.word("state", state, State::parse),
                        Page.after(after),
                        Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(
            operationId = "offerAnimal",
            summary = "Offer an animal to a fellow member, or hand it out with a claim code (the holder)",
            description =
                    "An offered animal stays where it is until the offer is accepted. One that is handed out is with"
                            + " a holder who does not take part, until they claim it or you take it back.")
    @APIResponse(
            responseCode = "201",
            description = "The transfer has begun; a claim code is shown this once",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Offered.class)))
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
        NO_SUCH_KEEPER,
        TRANSFER_TO_YOURSELF,
        ON_LOAN,
        NOT_ON_LOAN,
        DATE_IN_FUTURE
    })
    public Response offer(@RestPath String population, @NotNull @Valid NewTransfer transfer) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), transfer, () -> {
            var offered = transfers.offer(by, transfer);
            var view = offered.transfer();
            var answer = Answer.created(
                    URI.create("/api/v1/populations/" + population + "/transfers/" + view.id()),
                    view.revision(),
                    offered);
            return offered.claimCode() == null ? answer : answer.shownOnce();
        });
    }

    @GET
    @Path("{transfer}")
    @Operation(operationId = "getTransfer", summary = "One transfer of yours")
    @APIResponse(
            responseCode = "200",
            description = "The transfer",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = TransferView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_TRANSFER, BAD_PARAMETER})
    public Response transfer(@RestPath String population, @RestPath UUID transfer) {
        var view = transfers.get(signedIn.standing(population), transfer);
        return Revision.tagged(view, view.revision());
    }

    @POST
    @Path("{transfer}/acceptance")
    @Operation(operationId = "acceptTransfer", summary = "Accept an offer: the animal moves at once (the receiver)")
    @APIResponse(
            responseCode = "200",
            description = "The transfer, accepted",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = TransferView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_TRANSFER,
        BAD_PARAMETER,
        NOT_ALLOWED,
        TRANSFER_ENDED,
        ANIMAL_DEAD,
        ANIMAL_MERGED,
        ANIMAL_IN_DISPUTE,
        NO_COLLECTION,
        NO_SUCH_COLLECTION,
        DATE_IN_FUTURE
    })
    public Response accept(
            @RestPath String population, @RestPath UUID transfer, @NotNull @Valid Acceptance acceptance) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), acceptance, () -> answer(transfers.accept(by, transfer, acceptance)));
    }

    @POST
    @Path("{transfer}/refusal")
    @Operation(operationId = "refuseTransfer", summary = "Refuse an offer (the receiver)")
    @APIResponse(
            responseCode = "200",
            description = "The transfer, refused",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = TransferView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_TRANSFER, BAD_PARAMETER, NOT_ALLOWED, TRANSFER_ENDED})
    public Response refuse(@RestPath String population, @RestPath UUID transfer, @NotNull @Valid Ending ending) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), ending, () -> answer(transfers.refuse(by, transfer, ending)));
    }

    @POST
    @Path("{transfer}/withdrawal")
    @Operation(
            operationId = "withdrawTransfer",
            summary = "Take an offer back, or an animal that was handed out and not claimed (the giver)")
    @APIResponse(
            responseCode = "200",
            description = "The transfer, withdrawn",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = TransferView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_TRANSFER, BAD_PARAMETER, NOT_ALLOWED, TRANSFER_ENDED})
    public Response withdraw(@RestPath String population, @RestPath UUID transfer, @NotNull @Valid Ending ending) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), ending, () -> answer(transfers.withdraw(by, transfer, ending)));
    }

    @POST
    @Path("{transfer}/claim-code")
    @Operation(
            operationId = "renewClaimCode",
            summary = "Get a fresh claim code in place of the one before (the giver)")
    @APIResponse(
            responseCode = "200",
            description = "The transfer and its claim code, shown this once",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Offered.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_TRANSFER, BAD_PARAMETER, NOT_ALLOWED, TRANSFER_ENDED})
    public Response renewCode(@RestPath String population, @RestPath UUID transfer, @NotNull @Valid Renewal renewal) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), renewal, () -> {
            var renewed = transfers.renewCode(by, transfer, renewal);
            return Answer.ok(renewed.transfer().revision(), renewed).shownOnce();
        });
    }

    private static Answer answer(TransferView transfer) {
        return Answer.ok(transfer.revision(), transfer);
    }
}
