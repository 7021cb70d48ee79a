package org.demebook.keeper;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.Optional;
import org.demebook.wall.Wall;
import org.eclipse.microprofile.jwt.JsonWebToken;

/** Who sends the present request, read from their token. Resources ask here and pass the answer on: no door reads it itself. */
@ApplicationScoped
public class SignedIn {
    private static final Duration TRUSTED = Duration.ofSeconds(10);

    private final Cache<String, Asker> known =
            Caffeine.newBuilder().maximumSize(10_000).expireAfterWrite(TRUSTED).build();

    @Inject
    SecurityIdentity identity;

    @Inject
    Accounts accounts;

    @Inject
    Keepers keepers;

    @Inject
    Wall wall;

    public Asker asker() {
        if (identity.isAnonymous() || !(identity.getPrincipal() instanceof JsonWebToken token)) {
            throw new UnauthorizedException();
        }
        var administrator = identity.hasRole("administrator");
        if (!administrator && !identity.hasRole("keeper")) {
            throw new ForbiddenException(); // an account, but not for this
        }
        // an account that was taken away is noticed within ten seconds
        var asker = known.get(token.getSubject(), subject -> accounts.asker(token, administrator));
        wall.asks(asker.keeperId());
        return asker;
    }

    /** The keeper who sends the request; empty when nobody is signed in. */
    public Optional<Asker> askerIfAny() {
        return identity.isAnonymous() ? Optional.empty() : Optional.of(asker());
    }

    /** An account is gone: its token is good for nothing from now on, not even for a moment. */
    public void forget(Asker gone) {
        known.asMap().values().removeIf(asker -> asker.keeperId().equals(gone.keeperId()));
    }

    public Standing standing(String populationCode) {
        return keepers.standing(asker(), populationCode);
    }
}
