package org.demebook.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Where whoever has the paper checks it: at {@code demebook.public-url}, or where the request came to. */
@ApplicationScoped
class Address {
    @ConfigProperty(name = "demebook.public-url")
    Optional<URI> publicUrl;

    @Context
    UriInfo request;

    String of(String code) {
        var base = publicUrl.orElseGet(request::getBaseUri).toString();
        return base + (base.endsWith("/") ? "" : "/") + "sheets/" + code;
    }
}
