package org.demebook.transfer;

import static org.demebook.problem.ProblemType.*;

import io.vertx.core.http.HttpServerRequest;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.demebook.keeper.Asker;
import org.demebook.keeper.Attempts;
import org.demebook.keeper.Secret;
import org.demebook.keeper.SignedIn;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

@Path("/api/v1/claims")
@Tag(name = "Transfers")
class ClaimResource {
    @Inject
    SignedIn signedIn;

    @Inject
    Claims claims;

    @Inject
    Attempts attempts;

    @Inject
    Once once;

    @POST
    @PermitAll
    @Operation(
            operationId = "claimAnimal",
            summary = "Take over an animal with the claim code of its giver",
            description =
                    "With a token: the keeper joins the population if need be and takes the animal. Without one: an"
                            + " account is opened first, and the answer holds its token, shown this once.")
    @APIResponse(
            responseCode = "200",
            description = "The animal is yours",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = Claimed.class)))
    @Refuses({
        CLAIM_CODE_NOT_VALID,
        TOO_MANY_REQUESTS,
        NOT_SIGNED_IN,
        TRANSFER_TO_YOURSELF,
        ANIMAL_MERGED,
        ANIMAL_IN_DISPUTE,
        NO_SUCH_COLLECTION,
        NAME_TAKEN,
        WEAK_PASSWORD,
        SIGN_IN_ELSEWHERE
    })
    public Response claim(@NotNull @Valid Claim claim, @Context HttpServerRequest request) {
        var asker = signedIn.askerIfAny();
        // where nobody is signed in yet, the code itself says whose key this is
        var actor = asker.map(Asker::keeperId)
                .orElseGet(() ->
                        UUID.nameUUIDFromBytes(Secret.asIssued(claim.code()).getBytes(StandardCharsets.UTF_8)));
        return attempts.counted(
                request,
                () -> once.answer(actor, claim, () -> {
                    var answer = Answer.ok(null, claims.claim(asker.orElse(null), claim));
                    return asker.isPresent() ? answer : answer.shownOnce();
                }));
    }
}
