package org.demebook.breeding;

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

@Path("/api/v1/populations/{population}/introductions")
@Authenticated
@Tag(name = "Breeding")
class IntroductionResource {
    /** A page of introductions. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record IntroductionPage(
            List<IntroductionView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Introductions introductions;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listIntroductions",
            summary =
                    "The introductions recorded in your collections and those of females that you hold, the latest first")
    @APIResponse(
            responseCode = "200",
            description = "A page of introductions; the Link header leads to the next",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = IntroductionPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER, MISTYPED_NUMBER, NO_SUCH_ANIMAL})
    public Response list(
            @RestPath String population,
            @QueryParam("animal") @Nullable String animal,
            @QueryParam("open") @Nullable Boolean open,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return introductions
                .page(signedIn.standing(population), animal, open, Page.after(after), Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(
            operationId = "recordIntroduction",
            summary = "Record that a male and a female, both in your collections, were put together")
    @APIResponse(
            responseCode = "201",
            description = "The introduction, and what is worth a second look",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = IntroductionView.RecordedIntroduction.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        ANIMAL_MERGED,
        DAM_NOT_FEMALE,
        SIRE_NOT_MALE,
        DATE_IN_FUTURE,
        INTRODUCTION_OVERLAPS
    })
    public Response open(@RestPath String population, @NotNull @Valid NewIntroduction introduction) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), introduction, () -> {
            var recorded = introductions.open(by, introduction);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/introductions/"
                            + recorded.introduction().id()),
                    recorded.introduction().revision(),
                    recorded);
        });
    }

    @GET
    @Path("{id}")
    @Operation(operationId = "getIntroduction", summary = "One introduction")
    @APIResponse(
            responseCode = "200",
            description = "The introduction; the ETag is wanted for corrections",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = IntroductionView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_INTRODUCTION, BAD_PARAMETER})
    public Response introduction(@RestPath String population, @RestPath UUID id) {
        var view = introductions.get(signedIn.standing(population), id);
        return Revision.tagged(view, view.revision());
    }

    @PUT
    @Path("{id}")
    @Operation(operationId = "correctIntroduction", summary = "Correct the days of an introduction (who recorded it)")
    @APIResponse(
            responseCode = "200",
            description = "The introduction, and what is worth a second look",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = IntroductionView.RecordedIntroduction.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_INTRODUCTION,
        NOT_ALLOWED,
        RECORD_WITHDRAWN,
        REVISION_MISSING,
        REVISION_OUTDATED,
        DATE_IN_FUTURE,
        INTRODUCTION_OVERLAPS,
        BAD_PARAMETER
    })
    public Response correct(
            @RestPath String population,
            @RestPath UUID id,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid IntroductionDays days) {
        var corrected = introductions.correct(
                signedIn.standing(population), id, ifMatch, days.fromOn(), days.untilOn(), days.notes());
        return Revision.tagged(corrected, corrected.introduction().revision());
    }

    @POST
    @Path("{id}/end")
    @Operation(operationId = "endIntroduction", summary = "Record the last day together")
    @APIResponse(
            responseCode = "200",
            description = "The introduction",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = IntroductionView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_INTRODUCTION,
        INTRODUCTION_ENDED,
        INTRODUCTION_OVERLAPS,
        RECORD_WITHDRAWN,
        DATE_IN_FUTURE,
        BAD_PARAMETER
    })
    public Response end(@RestPath String population, @RestPath UUID id, @NotNull @Valid Separation separation) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), separation, () -> {
            var ended = introductions.end(by, id, separation.untilOn());
            return Answer.ok(ended.revision(), ended);
        });
    }

    @POST
    @Path("{id}/withdrawal")
    @Operation(
            operationId = "withdrawIntroduction",
            summary = "Say that an introduction never took place (who recorded it)")
    @APIResponse(
            responseCode = "200",
            description = "The introduction, which counts for nothing now",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = IntroductionView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_INTRODUCTION, NOT_ALLOWED, BAD_PARAMETER})
    public Response withdraw(@RestPath String population, @RestPath UUID id, @NotNull @Valid Withdrawal withdrawal) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), withdrawal, () -> {
            var withdrawn = introductions.withdraw(by, id, withdrawal.reason());
            return Answer.ok(withdrawn.revision(), withdrawn);
        });
    }
}
