package org.demebook.keeper;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.quarkus.oidc.runtime.OidcAuthenticationMechanism;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpCredentialTransport;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Alternative;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.Set;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.jspecify.annotations.Nullable;

/**
 * Remembers for a few seconds whose a token is that was found valid, so that a keeper who asks again and again does not pay
 * for the check of its signature each time. A token is never taken beyond its own end; a key that is taken away is noticed
 * within ten seconds.
 */
@Alternative
@Priority(1)
@ApplicationScoped
class VerifiedTokens implements HttpAuthenticationMechanism {
    private static final String AUTHORIZATION = "Authorization";
    private static final Duration TRUSTED = Duration.ofSeconds(10);

    private final Cache<String, SecurityIdentity> verified =
            Caffeine.newBuilder().maximumSize(10_000).expireAfterWrite(TRUSTED).build();

    @Inject
    OidcAuthenticationMechanism oidc;

    @Inject
    Clock clock;

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext request, IdentityProviderManager providers) {
        var authorization = request.request().getHeader(AUTHORIZATION);
        var ofBrowser = authorization == null ? BrowserSession.token(request) : null;
        if (ofBrowser != null) {
            request.request().headers().set(AUTHORIZATION, "Bearer " + ofBrowser);
            // a session that has ended is none: the page says where to sign in
            return authenticate(request, providers).onFailure().recoverWithNull();
        }
        if (authorization == null) {
            return oidc.authenticate(request, providers);
        }
        var known = verified.getIfPresent(authorization);
        if (known != null && !hasEnded(known)) {
            return Uni.createFrom().item(known);
        }
        return oidc.authenticate(request, providers).invoke(identity -> remember(authorization, identity));
    }

    private void remember(String authorization, @Nullable SecurityIdentity identity) {
        if (identity != null && identity.getPrincipal() instanceof JsonWebToken) {
            // who it is and nothing of the request that it came with
            verified.put(
                    authorization,
                    QuarkusSecurityIdentity.builder()
                            .setPrincipal(identity.getPrincipal())
                            .addRoles(identity.getRoles())
                            .build());
        }
    }

    private boolean hasEnded(SecurityIdentity identity) {
        return !(identity.getPrincipal() instanceof JsonWebToken token)
                || token.getExpirationTime() <= clock.instant().getEpochSecond();
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext request) {
        return oidc.getChallenge(request);
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return oidc.getCredentialTypes();
    }

    @Override
    public Uni<HttpCredentialTransport> getCredentialTransport(RoutingContext request) {
        return oidc.getCredentialTransport(request);
    }
}
