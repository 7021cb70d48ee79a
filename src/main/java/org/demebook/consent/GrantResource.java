package org.demebook.consent;

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
import org.demebook.problem.Refusal;
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

@Path("/api/v1/populations/{population}/grants")
@Authenticated
@Tag(name = "Consent")
class GrantResource {
    /** A page of grants. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    record GrantPage(List<GrantView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Grants grants;

    @Inject
    Effects effects;

    @Inject
    Receipts receipts;

    @Inject
    Once once;

    @GET
    @Operation(
            operationId = "listGrants",
            summary = "What your collections let others see, the latest first",
            description = "state=live shows what holds now, endWithinDays=30 what will have to be renewed soon.")
    @APIResponse(
            responseCode = "200",
            description = "A page of grants; the Link header leads to the next",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = GrantPage.class)))
    @Refuses({NO_SUCH_POPULATION, BAD_PARAMETER})
    public Response list(
            @RestPath String population,
            @QueryParam("state") @Nullable String state,
            @QueryParam("endWithinDays") @Nullable Integer endWithinDays,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return grants.page(
                        signedIn.standing(population),
                        state(state),
                        days(endWithinDays),
                        Page.after(after),
                        Page.limit(limit))
                .response(uri);
    }

    @POST
    @Operation(operationId = "giveGrant", summary = "Let somebody see, or use, some of what your collection recorded")
    @APIResponse(
            responseCode = "201",
            description = "The grant",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = GrantView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_COLLECTION,
        NO_SUCH_COLLECTION,
        GRANT_TO_NOBODY,
        NO_SUCH_KEEPER,
        ANIMAL_NOT_IN_COLLECTION,
        GRANT_PERIOD_NOT_POSSIBLE
    })
    public Response give(@RestPath String population, @NotNull @Valid NewGrant grant) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), grant, () -> {
            var given = grants.give(by, grant);
            return Answer.created(
                    URI.create("/api/v1/populations/" + population + "/grants/" + given.id()), given.revision(), given);
        });
    }

    @POST
    @Path("preview")
    @Operation(
            operationId = "checkSharing",
            summary = "See what a grant, or a ready choice, would change; nothing is saved",
            description =
                    "Who may do what with which field groups of how many of your animals, now and then. For members"
                            + " of the population; to everybody else it does not exist.")
    @APIResponse(
            responseCode = "200",
            description = "The effect",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = EffectView.class)))
    @Refuses({
        NO_SUCH_POPULATION,
        NO_COLLECTION,
        NO_SUCH_COLLECTION,
        GRANT_TO_NOBODY,
        NO_SUCH_KEEPER,
        ANIMAL_NOT_IN_COLLECTION,
        GRANT_PERIOD_NOT_POSSIBLE
    })
    public EffectView preview(@RestPath String population, @NotNull @Valid PlannedSharing sharing) {
        return effects.effect(signedIn.standing(population), sharing);
    }

    @GET
    @Path("{grant}")
    @Operation(operationId = "getGrant", summary = "One grant of a collection of yours")
    @APIResponse(
            responseCode = "200",
            description = "The grant",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = GrantView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_GRANT})
    public Response grant(@RestPath String population, @RestPath UUID grant) {
        var view = grants.get(signedIn.standing(population), grant);
        return Revision.tagged(view, view.revision());
    }

    @GET
    @Path("{grant}/receipt")
    @Operation(
            operationId = "getConsentReceipt",
            summary = "A grant as a consent record after ISO/IEC TS 27560, to be kept by whoever gave it")
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_GRANT})
    public ConsentReceipt receipt(@RestPath String population, @RestPath UUID grant) {
        return receipts.of(signedIn.standing(population), grant);
    }

    @POST
    @Path("{grant}/withdrawal")
    @Operation(operationId = "withdrawGrant", summary = "Take a grant back, from now on")
    @APIResponse(
            responseCode = "200",
            description = "The grant, withdrawn",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = GrantView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_GRANT, GRANT_ENDED})
    public Response withdraw(@RestPath String population, @RestPath UUID grant) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> answer(grants.withdraw(by, grant)));
    }

    @POST
    @Path("{grant}/renewal")
    @Operation(
            operationId = "renewGrant",
            summary = "Give the same again for 24 months, in place of the earlier one",
            description = "Also of one that has run out; not of one that was withdrawn. Sent again with the same"
                    + " Idempotency-Key, it has one effect and one answer.")
    @APIResponse(
            responseCode = "200",
            description = "The new grant",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = GrantView.class)))
    @Refuses({NO_SUCH_POPULATION, NO_SUCH_GRANT, GRANT_ENDED, NO_SUCH_KEEPER})
    public Response renew(@RestPath String population, @RestPath UUID grant) {
        var by = signedIn.standing(population);
        return once.answer(by.keeperId(), null, () -> answer(grants.renew(by, grant)));
    }

    private static Answer answer(GrantView grant) {
        return Answer.ok(grant.revision(), grant);
    }

    private static @Nullable GrantState state(@Nullable String word) {
        try {
            return word == null ? null : GrantState.parse(word);
        } catch (IllegalArgumentException e) {
            throw new Refusal(BAD_PARAMETER, "state: %s.".formatted(e.getMessage()));
        }
    }

    private static @Nullable Integer days(@Nullable Integer days) {
        if (days != null && (days < 0 || days > 800)) {
            throw new Refusal(BAD_PARAMETER, "endWithinDays is %d; ask for 0 to 800 days.".formatted(days));
        }
        return days;
    }
}
