package org.demebook.keeper;

import static org.demebook.problem.ProblemType.SIGN_IN_ELSEWHERE;
import static org.demebook.problem.ProblemType.TOO_MANY_REQUESTS;
import static org.demebook.problem.ProblemType.WRONG_SIGN_IN;

import io.vertx.core.http.HttpServerRequest;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

@Path("/api/v1/tokens")
@Tag(name = "Sign-in")
class TokenResource {
    @Inject
    Accounts accounts;

    @Inject
    Attempts attempts;

    @POST
    @PermitAll
    @Produces("application/json")
    @Operation(
            operationId = "signIn",
            summary = "Sign in with name and password",
            description = "Gives a bearer token. It creates nothing, so it takes no Idempotency-Key.")
    @APIResponse(
            responseCode = "200",
            description = "The token; as plain text it is the token alone",
            content = {
                @Content(mediaType = "application/json", schema = @Schema(implementation = TokenView.class)),
                @Content(mediaType = "text/plain", schema = @Schema(implementation = String.class))
            })
    @Refuses({WRONG_SIGN_IN, TOO_MANY_REQUESTS, SIGN_IN_ELSEWHERE})
    public TokenView signIn(@NotNull @Valid SignIn given, @Context HttpServerRequest request) {
        return attempts.counted(request, () -> accounts.token(given));
    }

    @POST
    @PermitAll
    @Produces("text/plain")
    @Operation(hidden = true)
    @Refuses({WRONG_SIGN_IN, TOO_MANY_REQUESTS, SIGN_IN_ELSEWHERE})
    public String signInPlain(@NotNull @Valid SignIn given, @Context HttpServerRequest request) {
        return signIn(given, request).accessToken();
    }
}
