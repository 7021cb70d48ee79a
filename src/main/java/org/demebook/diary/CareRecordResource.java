package org.demebook.diary;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.demebook.diary.CareRecords.Recorded;
import org.demebook.diary.CareRecords.RecordedBatch;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Page;
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
@Tag(name = "Care records")
class CareRecordResource {
    /** A page of care records. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record CareRecordPage(
            List<CareRecordView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    CareRecords careRecords;

    @Inject
    Once once;

    @GET
    @Path("animals/{number}/care-records")
    @Operation(
            operationId = "listCareRecords",
            summary = "What was written down of an animal, the latest first",
            description = "Yours, and of an animal that you hold also the sheds, meals, measures and tests that it came"
                    + " with. For everybody else there are none.")
    @APIResponse(
            responseCode = "200",
            description = "A page of care records; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareRecordPage.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, BAD_PARAMETER})
    public Response list(
            @RestPath String population,
            @RestPath String number,
            @QueryParam("kind") @Nullable String kind,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return careRecords
                .page(signedIn.standing(population), number, kind, Page.after(after), Page.limit(limit))
                .response(uri);
    }

    @POST
    @Path("animals/{number}/care-records")
    @Operation(
            operationId = "writeCareRecord",
            summary = "Write down a shed, a meal, measures, a move, a health note, a test or a quarantine (the holder)")
    @APIResponse(
            responseCode = "201",
            description = "The care record, and what is worth a second look",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Recorded.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, ANIMAL_MERGED, DATE_IN_FUTURE})
    public Response write(
            @RestPath String population, @RestPath String number, @NotNull @Valid StatedCareRecord record) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), record, () -> {
            var recorded = careRecords.record(by, number, record);
            return Answer.created(
                    address(population, recorded.record().id()),
                    recorded.record().revision(),
                    recorded);
        });
    }

    @POST
    @Path("care-records")
    @Operation(
            operationId = "writeCareRecords",
            summary = "Write down care records of a whole rack (who holds the animals)",
            description = "Up to 200, all of them or none: every finding names its record, as in records[3].mass. Sent"
                    + " again with the same Idempotency-Key, it has one effect and one answer.")
    @APIResponse(
            responseCode = "200",
            description = "The care records in the order in which they were sent, and what is worth a second look",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = RecordedBatch.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_YOUR_ANIMAL, ANIMAL_MERGED, DATE_IN_FUTURE})
    public Response writeAll(@RestPath String population, @NotNull @Valid NewCareRecords batch) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), batch, () -> Answer.ok(null, careRecords.recordAll(by, batch.records())));
    }

    @GET
    @Path("care-records/{record}")
    @Operation(operationId = "getCareRecord", summary = "One care record")
    @APIResponse(
            responseCode = "200",
            description = "The care record; the ETag is wanted for corrections",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareRecordView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CARE_RECORD, BAD_PARAMETER})
    public Response careRecord(@RestPath String population, @RestPath UUID record) {
        var view = careRecords.get(signedIn.standing(population), record);
        return Revision.tagged(view, view.revision());
    }

    @PUT
    @Path("care-records/{record}")
    @Operation(
            operationId = "correctCareRecord",
            summary = "State a care record as it is known now (who wrote it)",
            description = "The whole record anew, its kind included; what it said before stays in the journal.")
    @APIResponse(
            responseCode = "200",
            description = "The care record as it is known now, and what is worth a second look",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Recorded.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_CARE_RECORD,
        NOT_ALLOWED,
        CARE_RECORD_WITHDRAWN,
        REVISION_MISSING,
        REVISION_OUTDATED,
        DATE_IN_FUTURE,
        BAD_PARAMETER
    })
    public Response correct(
            @RestPath String population,
            @RestPath UUID record,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid StatedCareRecord stated) {
        var corrected = careRecords.correct(signedIn.standing(population), record, ifMatch, stated);
        return Revision.tagged(corrected, corrected.record().revision());
    }

    @POST
    @Path("care-records/{record}/withdrawal")
    @Operation(
            operationId = "withdrawCareRecord",
            summary = "Take back what was entered by mistake (who wrote it)",
            description = "It is left out of lists and of everything that is computed; the journal keeps it. Sent again"
                    + " it changes nothing.")
    @APIResponse(
            responseCode = "200",
            description = "The care record, withdrawn",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareRecordView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_CARE_RECORD, NOT_ALLOWED, BAD_PARAMETER})
    public Response withdraw(@RestPath String population, @RestPath UUID record) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> {
            var view = careRecords.withdraw(by, record);
            return Answer.ok(view.revision(), view);
        });
    }

    @POST
    @Path("care-records/{record}/end")
    @Operation(
            operationId = "endCareRecord",
            summary = "What a health note is about is over, or a quarantine is (who wrote it)")
    @APIResponse(
            responseCode = "200",
            description = "The care record with its end",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = CareRecordView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_CARE_RECORD,
        NOT_ALLOWED,
        CARE_RECORD_WITHDRAWN,
        CARE_RECORD_HAS_NO_END,
        DATE_IN_FUTURE,
        BAD_PARAMETER
    })
    public Response end(@RestPath String population, @RestPath UUID record, @NotNull @Valid StatedEnd end) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), end, () -> {
            var view = careRecords.end(by, record, end.on());
            return Answer.ok(view.revision(), view);
        });
    }

    private static URI address(String population, UUID recordId) {
        return URI.create("/api/v1/populations/" + population + "/care-records/" + recordId);
    }
}
