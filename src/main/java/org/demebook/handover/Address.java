package org.demebook.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** How this server is reached by whoever has a paper or a code: at {@code demebook.public-url}, or where the request came to. */
@ApplicationScoped
public class Address {
    @ConfigProperty(name = "demebook.public-url")
    Optional<URI> publicUrl;

    @Context
    UriInfo request;

    /** Where whoever has a sheet checks it. */
    String of(String code) {
        return below("sheets/" + code);
    }

    /** Where whoever got a claim code types it. */
    String ofClaims() {
        return below("claim");
    }

    /** Where a claim code is filled in already. */
    public String ofClaim(String claimCode) {
        return ofClaims() + "?code=" + claimCode;
    }

    private String below(String path) {
        var base = publicUrl.orElseGet(request::getBaseUri).toString();
        return base + (base.endsWith("/") ? "" : "/") + path;
    }
}
