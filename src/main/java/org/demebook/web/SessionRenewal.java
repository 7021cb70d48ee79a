package org.demebook.web;

import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.ext.Provider;
import java.time.Clock;
import org.demebook.keeper.Accounts;
import org.demebook.keeper.BrowserSession;
import org.eclipse.microprofile.jwt.JsonWebToken;

/** Who comes back within the days that a session lasts does not have to sign in again. */
@Provider
class SessionRenewal implements ContainerResponseFilter {
    @Inject
    SecurityIdentity identity;

    @Inject
    CurrentVertxRequest current;

    @Inject
    Visit visit;

    @Inject
    Accounts accounts;

    @Inject
    Clock clock;

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        if (response.getStatus() == 200
                && visit.isSignedIn()
                && BrowserSession.signed(current.getCurrent())
                && identity.getPrincipal() instanceof JsonWebToken token
                && BrowserSession.isOld(token, clock.instant())) {
            accounts.renewed(visit.asker()).ifPresent(fresh -> response.getHeaders()
                    .add(
                            HttpHeaders.SET_COOKIE,
                            BrowserSession.cookie(fresh, SignInPage.isSecure(request.getUriInfo()))));
        }
    }
}
