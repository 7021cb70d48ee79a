package org.demebook.keeper;

import static org.demebook.problem.ProblemType.NOT_ALLOWED;

import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.ext.Provider;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * A browser sends its cookie along with whatever a page makes it send. A change that comes by cookie, or to a page, therefore
 * has to show that a page of this server sent it. The browser says so itself, in Sec-Fetch-Site (W3C Fetch Metadata), and
 * where the address is no secure one in Origin (RFC 6454); and a page of another site cannot set a header of ours, nor send
 * JSON, without being asked first (CORS, which is off here).
 */
@Provider
class OwnPagesOnly implements ContainerRequestFilter {
    private static final Set<String> READS = Set.of("GET", "HEAD", "OPTIONS");
    private static final String API = "/api/";
    // the forms of a body that a page may send to any site unasked (Fetch standard, CORS-safelisted request-header)
    private static final List<String> OF_FORMS =
            List.of("application/x-www-form-urlencoded", "multipart/form-data", "text/plain");

    @Inject
    SecurityIdentity identity;

    @Inject
    CurrentVertxRequest current;

    @Override
    public void filter(ContainerRequestContext request) {
        var toPage = !request.getUriInfo().getPath().startsWith(API);
        if (!READS.contains(request.getMethod()) && (toPage || byCookie(request)) && mayBeOfAnotherSite(request)) {
            throw new Refusal(
                    NOT_ALLOWED,
                    "This came with your cookie, perhaps from a page of another site. Make the change here, or send a token.");
        }
    }

    private boolean byCookie(ContainerRequestContext request) {
        return !identity.isAnonymous()
                && (request.getHeaderString(HttpHeaders.AUTHORIZATION) == null
                        || BrowserSession.signed(current.getCurrent()));
    }

    private static boolean mayBeOfAnotherSite(ContainerRequestContext request) {
        var sentFrom = request.getHeaderString("Sec-Fetch-Site");
        if (sentFrom != null) {
            return !sentFrom.equals("same-origin");
        }
        var origin = request.getHeaderString("Origin");
        if (origin != null) {
            return !origin.equals(own(request.getUriInfo().getRequestUri()));
        }
        return request.getHeaderString("Idempotency-Key") == null
                && request.getHeaderString("If-Match") == null
                && request.getMethod().equals("POST")
                && aFormCouldSend(request.getHeaderString(HttpHeaders.CONTENT_TYPE));
    }

    private static String own(URI address) {
        return address.getScheme() + "://" + address.getRawAuthority();
    }

    private static boolean aFormCouldSend(@Nullable String contentType) {
        return contentType == null
                || OF_FORMS.stream().anyMatch(contentType.strip().toLowerCase(Locale.ROOT)::startsWith);
    }
}
