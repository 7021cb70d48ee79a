package org.demebook.keeper;

import io.quarkus.security.Authenticated;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.demebook.rest.Refuses;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

@Path("/sign-in")
@Authenticated
@Tag(name = "Sign-in")
class SignInResource {
    @Inject
    SignedIn signedIn;

    @GET
    @Operation(
            operationId = "signInByBrowser",
            summary = "Sign in by browser, where a Keycloak keeps the accounts",
            description = "A browser is sent to Keycloak (302), comes back with a session cookie, and is sent on to its"
                    + " populations. /sign-out ends the session here and there.")
    @APIResponse(responseCode = "303", description = "You are signed in")
    @Refuses
    public Response signIn() {
        signedIn.asker();
        return Response.seeOther(URI.create("/api/v1/populations")).build();
    }
}
