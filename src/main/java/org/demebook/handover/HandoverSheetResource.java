package org.demebook.handover;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Attempts;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.demebook.rest.Revision;
import org.demebook.rest.ShownTo;
import org.demebook.transfer.Ending;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Hand-over sheets")
class HandoverSheetResource {
    private static final String HTML = "text/html;charset=UTF-8";

    /** The sheets of an animal, the latest first. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record HandoverSheetList(List<HandoverSheetView> items) {}

    /** @param claimCode as it was shown when you handed the animal out; it is printed and stored nowhere */
    record Printing(@NotNull @Size(max = 60) String claimCode) {
        @Override
        public String toString() {
            return "Printing[]"; // no code in a log
        }
    }

    @Inject
    SignedIn signedIn;

    @Inject
    HandoverSheets sheets;

    @Inject
    SheetPages pages;

    @Inject
    PrintedSheets printed;

    @Inject
    Attempts attempts;

    @Inject
    Once once;

    @POST
    @Path("animals/{number}/handover-sheets")
    @Operation(
            operationId = "issueHandoverSheet",
            summary = "Issue the sheet that goes with an animal (who holds it, or handed it out)",
            description =
                    "It says what the register knows today, and stays as it is; a later one supersedes it. It can be"
                            + " issued of a young that is not established: then it says so.")
    @APIResponse(
            responseCode = "201",
            description = "The sheet",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = HandoverSheetView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, ANIMAL_DEAD, ANIMAL_MERGED})
    public Response issue(
            @RestPath String population, @RestPath String number, @NotNull @Valid NewHandoverSheet sheet) {
        var by = signedIn.standing(population);
        var figures = sheets.figures(by, number);
        return once.answer(by.keeperId(), sheet, () -> {
            var issued = sheets.issue(by, number, sheet, figures);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/handover-sheets/" + issued.id()),
                    issued.revision(),
                    issued);
        });
    }

    @GET
    @Path("animals/{number}/handover-sheets")
    @Operation(
            operationId = "listHandoverSheets",
            summary = "The sheets of an animal that you may read, the latest first")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER})
    public HandoverSheetList ofAnimal(@RestPath String population, @RestPath String number) {
        return new HandoverSheetList(sheets.of(signedIn.standing(population), number));
    }

    @GET
    @Path("handover-sheets/{sheet}")
    @Operation(
            operationId = "getHandoverSheet",
            summary = "A sheet (who gave the animal, who received it, who holds it now)")
    @APIResponse(
            responseCode = "200",
            description = "The sheet",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = HandoverSheetView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_HANDOVER_SHEET, BAD_PARAMETER})
    public Response sheet(@RestPath String population, @RestPath UUID sheet) {
        var view = sheets.get(signedIn.standing(population), sheet);
        return Revision.tagged(view, view.revision());
    }

    @GET
    @Path("handover-sheets/{sheet}.html")
    @Produces(HTML)
    @Operation(operationId = "getHandoverSheetPage", summary = "A sheet as a page")
    @APIResponse(
            responseCode = "200",
            description = "The page: well-formed XHTML that loads nothing",
            content = @Content(mediaType = HTML, schema = @Schema(type = SchemaType.STRING)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_HANDOVER_SHEET, HANDOVER_SHEET_ALTERED, BAD_PARAMETER})
    public Response page(@RestPath String population, @RestPath UUID sheet) {
        var text = sheets.print(signedIn.standing(population), sheet, null);
        return Response.ok(pages.of(text), HTML)
                .header("Content-Security-Policy", SheetPages.SECURITY_POLICY)
                .header("Cache-Control", "private, no-cache")
                .build();
    }

    @GET
    @Path("handover-sheets/{sheet}.pdf")
    @Produces(PrintedSheets.PDF)
    @Operation(operationId = "getHandoverSheetPdf", summary = "A sheet as PDF, on A4")
    @APIResponse(
            responseCode = "200",
            description = "One page, two at most",
            content =
                    @Content(
                            mediaType = PrintedSheets.PDF,
                            schema = @Schema(type = SchemaType.STRING, format = "binary")))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_HANDOVER_SHEET, HANDOVER_SHEET_ALTERED, BAD_PARAMETER})
    public Response pdf(@RestPath String population, @RestPath UUID sheet) {
        return printed.pdf(signedIn.standing(population), sheet, null);
    }

    @POST
    @Path("handover-sheets/{sheet}/print")
    @Produces(PrintedSheets.PDF)
    @Operation(
            operationId = "printHandoverSheet",
            summary = "A sheet as PDF, with the claim code for a buyer who has no account",
            description = "The code is printed and stored nowhere. Changes nothing.")
    @APIResponse(
            responseCode = "200",
            description = "One page, two at most",
            content =
                    @Content(
                            mediaType = PrintedSheets.PDF,
                            schema = @Schema(type = SchemaType.STRING, format = "binary")))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_HANDOVER_SHEET,
        HANDOVER_SHEET_ALTERED,
        CLAIM_CODE_NOT_VALID,
        TOO_MANY_REQUESTS,
        BAD_PARAMETER
    })
    public Response print(
            @RestPath String population,
            @RestPath UUID sheet,
            @NotNull @Valid Printing printing,
            @Context HttpServerRequest request) {
        var by = signedIn.standing(population);
        return attempts.counted(request, () -> printed.pdf(by, sheet, printing.claimCode()));
    }

    @POST
    @Path("handover-sheets/{sheet}/withdrawal")
    @Operation(operationId = "withdrawHandoverSheet", summary = "Withdraw a sheet (who issued it)")
    @APIResponse(
            responseCode = "200",
            description = "The sheet, withdrawn; whoever checks the paper is told so",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = HandoverSheetView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_HANDOVER_SHEET, NOT_ALLOWED, BAD_PARAMETER})
    public Response withdraw(@RestPath String population, @RestPath UUID sheet, @NotNull @Valid Ending ending) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), ending, () -> {
            var withdrawn = sheets.withdraw(by, sheet, ending);
            return Answer.ok(withdrawn.revision(), withdrawn);
        });
    }
}
