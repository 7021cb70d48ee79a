package org.demebook.keeper;

import static org.demebook.problem.ProblemType.ALREADY_MEMBER;
import static org.demebook.problem.ProblemType.INVITATION_NOT_VALID;
import static org.demebook.problem.ProblemType.NAME_TAKEN;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.SIGN_IN_ELSEWHERE;
import static org.demebook.problem.ProblemType.TOO_MANY_REQUESTS;
import static org.demebook.problem.ProblemType.WEAK_PASSWORD;

import io.quarkus.security.Authenticated;
import io.vertx.core.http.HttpServerRequest;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/invitations")
@Authenticated
@Tag(name = "Sign-in")
class InvitationResource {
    /**
     * Whom to invite, and into what.
     *
     * @param population code of a population that you coordinate; nothing for the node alone (administrators)
     */
    record NewInvitation(
            @Nullable @Size(max = 6) String population,
            @Nullable Role role) {}

    /** The secret of a one-time link. */
    record Secretive(@NotNull @Size(max = 100) String secret) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Accounts accounts;

    @Inject
    Attempts attempts;

    @Inject
    Once once;

    @POST
    @Operation(operationId = "invite", summary = "Invite a keeper by one-time link")
    @APIResponse(
            responseCode = "200",
            description = "The secret of the link, shown this once",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = InvitationView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED})
    public Response invite(@NotNull @Valid NewInvitation invitation) {
        var by = signedIn.asker();
        var into = invitation.population() == null ? null : signedIn.standing(invitation.population());
        return once.answer(
                by.keeperId(), invitation, () -> Answer.ok(null, accounts.invite(by, into, invitation.role()))
                        .shownOnce());
    }

    @POST
    @Path("acceptances")
    @PermitAll
    @Operation(
            operationId = "acceptInvitation",
            summary = "Open an account with a one-time link",
            description = "Needs no sign-in. The answer is the first token.")
    @APIResponse(
            responseCode = "200",
            description = "The account is open",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = TokenView.class)))
    @Refuses({INVITATION_NOT_VALID, NAME_TAKEN, WEAK_PASSWORD, TOO_MANY_REQUESTS, SIGN_IN_ELSEWHERE})
    public Response accept(@NotNull @Valid Acceptance acceptance, @Context HttpServerRequest request) {
        // nobody is signed in yet: the link itself says whose key this is
        var holder = UUID.nameUUIDFromBytes(acceptance.secret().getBytes(StandardCharsets.UTF_8));
        return attempts.counted(
                request,
                () -> once.answer(holder, acceptance, () -> Answer.ok(null, accounts.accept(acceptance))
                        .shownOnce()));
    }

    @POST
    @Path("joinings")
    @Operation(operationId = "joinByInvitation", summary = "Join a population with a one-time link, signed in already")
    @APIResponse(responseCode = "204", description = "You belong to the population now")
    @Refuses({INVITATION_NOT_VALID, ALREADY_MEMBER, TOO_MANY_REQUESTS})
    public Response join(@NotNull @Valid Secretive link, @Context HttpServerRequest request) {
        var by = signedIn.asker();
        return attempts.counted(
                request,
                () -> once.answer(by.keeperId(), link, () -> {
                    accounts.accept(by, link.secret());
                    return Answer.done();
                }));
    }
}
