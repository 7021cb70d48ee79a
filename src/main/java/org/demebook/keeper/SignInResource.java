package org.demebook.keeper;

import io.quarkus.oidc.OIDCException;
import io.quarkus.security.Authenticated;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;

/**
 * Where a browser signs in when a Keycloak keeps the accounts: it is sent there before it gets here, comes back with a
 * cookie, and is sent on. It is a page, no part of the contract.
 */
@Path(SignInResource.PATH)
class SignInResource {
    static final String PATH = "/sign-in";
    private static final int UNAVAILABLE = 503;

    @Inject
    SignedIn signedIn;

    @GET
    @Authenticated
    @Operation(hidden = true)
    public Response signIn() {
        signedIn.asker();
        return Response.seeOther(URI.create("/api/v1/populations")).build();
    }

    // Keycloak is asked before the request reaches a resource, so nobody else would put its silence into words
    void whenKeycloakIsAway(@Observes Router router) {
        router.route(PATH).failureHandler(SignInResource::tell);
    }

    private static void tell(RoutingContext request) {
        if (request.failure() instanceof OIDCException) {
            request.response()
                    .setStatusCode(UNAVAILABLE)
                    .putHeader("Content-Type", "text/plain; charset=utf-8")
                    .putHeader("Retry-After", "30")
                    .end("Keycloak, where you sign in, does not answer. Try again in a while.\n");
        } else {
            request.next();
        }
    }
}
