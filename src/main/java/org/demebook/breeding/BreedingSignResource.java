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

@Path("/api/v1/populations/{population}")
@Authenticated
@Tag(name = "Breeding")
class BreedingSignResource {
    /** A page of breeding signs. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record BreedingSignPage(
            List<BreedingSignView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    BreedingSigns signs;

    @Inject
    Once once;

    @GET
    @Path("animals/{number}/breeding-signs")
    @Operation(
            operationId = "listBreedingSigns",
            summary = "The breeding signs of a female that were noted in your collections, or all if you hold her")
    @APIResponse(
            responseCode = "200",
            description = "A page of signs, the latest noted first; the Link header leads to the next",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = BreedingSignPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER, MISTYPED_NUMBER, NO_SUCH_ANIMAL})
    public Response list(
            @RestPath String population,
            @RestPath String number,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return signs.page(signedIn.standing(population), number, Page.after(after), Page.limit(limit))
                .response(uri);
    }

    @POST
    @Path("animals/{number}/breeding-signs")
    @Operation(operationId = "noteBreedingSign", summary = "Note a breeding sign of a female that you hold")
    @APIResponse(
            responseCode = "201",
            description = "The sign, and what is worth a second look",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = BreedingSignView.NotedBreedingSign.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        ANIMAL_MERGED,
        DAM_NOT_FEMALE,
        SIRE_NOT_MALE,
        DATE_IN_FUTURE
    })
    public Response note(@RestPath String population, @RestPath String number, @NotNull @Valid NewBreedingSign sign) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), sign, () -> {
            var noted = signs.note(by, number, sign);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/breeding-signs/"
                            + noted.sign().id()),
                    noted.sign().revision(),
                    noted);
        });
    }

    @GET
    @Path("breeding-signs/{id}")
    @Operation(operationId = "getBreedingSign", summary = "One breeding sign")
    @APIResponse(
            responseCode = "200",
            description = "The sign; the ETag is wanted for corrections",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = BreedingSignView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_BREEDING_SIGN, BAD_PARAMETER})
    public Response sign(@RestPath String population, @RestPath UUID id) {
        var view = signs.get(signedIn.standing(population), id);
        return Revision.tagged(view, view.revision());
    }

    @PUT
    @Path("breeding-signs/{id}")
    @Operation(operationId = "correctBreedingSign", summary = "Correct a breeding sign (who noted it)")
    @APIResponse(
            responseCode = "200",
            description = "The sign as it is known now, and what is worth a second look",
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = BreedingSignView.NotedBreedingSign.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_BREEDING_SIGN,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_ALLOWED,
        RECORD_WITHDRAWN,
        REVISION_MISSING,
        REVISION_OUTDATED,
        SIRE_NOT_MALE,
        DATE_IN_FUTURE,
        BAD_PARAMETER
    })
    public Response correct(
            @RestPath String population,
            @RestPath UUID id,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid NewBreedingSign sign) {
        var corrected = signs.correct(signedIn.standing(population), id, ifMatch, sign);
        return Revision.tagged(corrected, corrected.sign().revision());
    }

    @POST
    @Path("breeding-signs/{id}/withdrawal")
    @Operation(operationId = "withdrawBreedingSign", summary = "Say that a breeding sign was not so (who noted it)")
    @APIResponse(
            responseCode = "200",
            description = "The sign, which counts for nothing now",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = BreedingSignView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_BREEDING_SIGN, NOT_ALLOWED, BAD_PARAMETER})
    public Response withdraw(@RestPath String population, @RestPath UUID id, @NotNull @Valid Withdrawal withdrawal) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), withdrawal, () -> {
            var withdrawn = signs.withdraw(by, id, withdrawal.reason());
            return Answer.ok(withdrawn.revision(), withdrawn);
        });
    }
}
