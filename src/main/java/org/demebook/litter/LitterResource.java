package org.demebook.litter;

import static org.demebook.problem.ProblemType.*;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
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

@Path("/api/v1/populations/{population}/litters")
@Authenticated
@Tag(name = "Litters")
class LitterResource {
    /** A page of litters. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record LitterPage(List<LitterView> items, @Nullable String next) {}

    /** The studbook numbers of two. */
    record TwinNumbers(@NotNull @Size(min = 2, max = 2) List<@NotNull @Size(max = 60) String> numbers) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Litters litters;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listLitters",
            summary = "The litters born in your collections and those of dams that you hold, the latest first")
    @APIResponse(
            responseCode = "200",
            description = "A page of litters; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = LitterPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER, MISTYPED_NUMBER, NO_SUCH_ANIMAL})
    public Response list(
            @RestPath String population,
            @QueryParam("dam") @Nullable String dam,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return litters.page(signedIn.standing(population), dam, Page.after(after), Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(
            operationId = "registerLitter",
            summary = "Register a litter with its young (who holds the dam)",
            description = "Every live-born gets a studbook number of its own, all from one block.")
    @APIResponse(
            responseCode = "201",
            description = "The litter, its young with their numbers, and what is worth a second look",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = RegisteredLitter.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        NO_SUCH_COLLECTION,
        LITTER_DOES_NOT_ADD_UP,
        LITTER_TOO_SOON,
        NO_SUCH_PARENT,
        DATE_IN_FUTURE,
        DAM_NOT_FEMALE,
        SIRE_NOT_MALE,
        BORN_BEFORE_PARENT,
        DAM_DIED_BEFORE_BIRTH,
        DAM_TOO_YOUNG,
        SIRE_TOO_YOUNG,
        FOUNDER_WITH_PARENTS,
        CONTRADICTORY_PARENTAGE,
        REFERENCE_TAKEN,
        TWINS_NOT_POSSIBLE
    })
    public Response register(@RestPath String population, @NotNull @Valid NewLitter litter) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), litter, () -> {
            var registered = litters.register(by, litter);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/litters/"
                            + registered.litter().id()),
                    registered.litter().revision(),
                    registered);
        });
    }

    @GET
    @Path("{litter}")
    @Operation(operationId = "getLitter", summary = "One litter")
    @APIResponse(
            responseCode = "200",
            description = "The litter; the ETag is wanted for corrections",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = LitterView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_LITTER, BAD_PARAMETER})
    public Response litter(@RestPath String population, @RestPath UUID litter) {
        var view = litters.get(signedIn.standing(population), litter);
        return Revision.tagged(view, view.revision());
    }

    @PUT
    @Path("{litter}/outcome")
    @Operation(
            operationId = "correctLitter",
            summary = "Correct the outcome at birth (who registered it)",
            description =
                    "More live-born than before are registered as further young of the litter. Fewer are refused: a"
                            + " death is reported, an animal registered twice is declared the same.")
    @APIResponse(
            responseCode = "200",
            description = "The litter as it is known now, and the further young",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = RegisteredLitter.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_LITTER,
        NOT_ALLOWED,
        REVISION_MISSING,
        REVISION_OUTDATED,
        LITTER_DOES_NOT_ADD_UP,
        BAD_PARAMETER
    })
    public Response correct(
            @RestPath String population,
            @RestPath UUID litter,
            @HeaderParam("If-Match") @Nullable String ifMatch,
            @NotNull @Valid Outcome outcome) {
        var corrected = litters.correct(signedIn.standing(population), litter, ifMatch, outcome);
        return Revision.tagged(corrected, corrected.litter().revision());
    }

    @GET
    @Path("{litter}/versions")
    @Operation(
            operationId = "listLitterVersions",
            summary = "What was stated of the outcome at birth, each time anew, the first first")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_LITTER, BAD_PARAMETER})
    public List<LitterVersionView> versions(@RestPath String population, @RestPath UUID litter) {
        return litters.versions(signedIn.standing(population), litter);
    }

    @POST
    @Path("{litter}/twins")
    @Operation(
            operationId = "stateTwins",
            summary = "State that two young came from one sac (who registered the litter)",
            description = "Identical twins are one genome: their kinship is that of an animal with itself, and what is"
                    + " found out of the parents of one holds for both. Unclear ones are linked, and otherwise"
                    + " littermates like any two.")
    @APIResponse(
            responseCode = "200",
            description = "The litter with its twins",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = LitterView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_LITTER, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_ALLOWED, TWINS_NOT_POSSIBLE})
    public Response stateTwins(@RestPath String population, @RestPath UUID litter, @NotNull @Valid StatedTwins twins) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), List.of(litter, twins), () -> {
            var view = litters.stateTwins(by, litter, twins.numbers(), twins.kind());
            return Answer.ok(view.revision(), view);
        });
    }

    @POST
    @Path("{litter}/twins/withdrawal")
    @Operation(
            operationId = "withdrawTwins",
            summary = "Take back that two young came from one sac (who registered the litter)")
    @APIResponse(
            responseCode = "200",
            description = "The litter without these twins",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = LitterView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_LITTER, NO_SUCH_ANIMAL, MISTYPED_NUMBER, NOT_ALLOWED, TWINS_NOT_POSSIBLE})
    public Response withdrawTwins(
            @RestPath String population, @RestPath UUID litter, @NotNull @Valid TwinNumbers twins) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), List.of(litter, twins), () -> {
            var view = litters.withdrawTwins(by, litter, twins.numbers());
            return Answer.ok(view.revision(), view);
        });
    }
}
