package org.demebook.approach;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.ANIMAL_NOT_COMPUTED_WITH;
import static org.demebook.problem.ProblemType.APPROACHED_ALREADY;
import static org.demebook.problem.ProblemType.APPROACH_ENDED;
import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.MISTYPED_NUMBER;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_CANDIDATES;
import static org.demebook.problem.ProblemType.NO_SUCH_ANIMAL;
import static org.demebook.problem.ProblemType.NO_SUCH_APPROACH;
import static org.demebook.problem.ProblemType.NO_SUCH_PARTNER;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.ON_HOLD;
import static org.demebook.problem.ProblemType.ON_LOAN;
import static org.demebook.problem.ProblemType.TOO_FEW_CONTRIBUTE;
import static org.demebook.problem.ProblemType.TOO_MANY_APPROACHES;

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
import org.demebook.problem.Refusal;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
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

@Path("/api/v1/populations/{population}/approaches")
@Authenticated
@Tag(name = "Pairings")
class ApproachResource {
    /** A page of approaches. */
    @ShownTo(ShownTo.Whom.BOTH_SIDES)
    record ApproachPage(List<ApproachView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Approaches approaches;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listApproaches",
            summary = "Approaches that you made and that were made to you, the latest first",
            description = "side=asked shows those that wait for your answer, and what became of them.")
    @APIResponse(
            responseCode = "200",
            description = "A page of approaches; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ApproachPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response list(
            @RestPath String population,
            @QueryParam("side") @Nullable String side,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return approaches
                .page(signedIn.standing(population), side(side), Page.after(after), Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(
            operationId = "proposeApproach",
            summary = "Ask the keeper of an unnamed partner whether you two want to know of each other",
            description =
                    "They read which animal of theirs is wanted, your words, and nothing else of you. You learn whose it is only"
                            + " when they agree; that nobody agreed you read after 30 days, for whatever reason. At most 2 for an"
                            + " animal and 5 for a household in 30 days.")
    @APIResponse(
            responseCode = "201",
            description = "The approach, open",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ApproachView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_SUCH_ANIMAL,
        MISTYPED_NUMBER,
        NOT_YOUR_ANIMAL,
        ANIMAL_DEAD,
        NO_CANDIDATES,
        ON_HOLD,
        TOO_FEW_CONTRIBUTE,
        NO_SUCH_PARTNER,
        ON_LOAN,
        ANIMAL_NOT_COMPUTED_WITH,
        APPROACHED_ALREADY,
        TOO_MANY_APPROACHES
    })
    public Response propose(@RestPath String population, @NotNull @Valid NewApproach approach) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), approach, () -> {
            var proposed = approaches.propose(by, approach);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/approaches/" + proposed.id()), null, proposed);
        });
    }

    @GET
    @Path("{approach}")
    @Operation(
            operationId = "getApproach",
            summary =
                    "One approach of yours; while both sides agree, with whose the other animal is and what the pair comes to")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_APPROACH, BAD_PARAMETER})
    public ApproachView approach(@RestPath String population, @RestPath UUID approach) {
        return approaches.get(signedIn.standing(population), approach);
    }

    @POST
    @Path("{approach}/agreement")
    @Operation(
            operationId = "agreeToApproach",
            summary = "Agree to an approach (the side that was asked)",
            description =
                    "For twelve months both sides may read number, collection and keepers of the other animal, and the kinship"
                            + " of the pair: look at the approach. It is a grant of each to each, to be found among your grants.")
    @APIResponse(
            responseCode = "200",
            description = "The approach, agreed",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ApproachView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_APPROACH, BAD_PARAMETER, NOT_ALLOWED, APPROACH_ENDED})
    public Response agree(@RestPath String population, @RestPath UUID approach) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> Answer.ok(null, approaches.agree(by, approach)));
    }

    @POST
    @Path("{approach}/refusal")
    @Operation(
            operationId = "refuseApproach",
            summary = "Refuse an approach (the side that was asked)",
            description = "The other side is not told, and reads after the thirty days that nobody agreed.")
    @APIResponse(
            responseCode = "200",
            description = "The approach, refused",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ApproachView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_APPROACH, BAD_PARAMETER, NOT_ALLOWED, APPROACH_ENDED})
    public Response refuse(@RestPath String population, @RestPath UUID approach) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> Answer.ok(null, approaches.refuse(by, approach)));
    }

    @POST
    @Path("{approach}/withdrawal")
    @Operation(
            operationId = "withdrawApproach",
            summary = "Take an approach back (the side that asked), or an agreement (either side)",
            description = "The grants that an agreement gave are withdrawn on both sides.")
    @APIResponse(
            responseCode = "200",
            description = "The approach, withdrawn or ended",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ApproachView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_APPROACH, BAD_PARAMETER, NOT_ALLOWED, APPROACH_ENDED})
    public Response withdraw(@RestPath String population, @RestPath UUID approach) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> Answer.ok(null, approaches.withdraw(by, approach)));
    }

    private static @Nullable ApproachSide side(@Nullable String word) {
        try {
            return word == null ? null : ApproachSide.parse(word);
        } catch (IllegalArgumentException e) {
            throw new Refusal(BAD_PARAMETER, "side=%s: %s.".formatted(word, e.getMessage()));
        }
    }
}
