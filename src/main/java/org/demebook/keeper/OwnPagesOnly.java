package org.demebook.keeper;

import static org.demebook.problem.ProblemType.IDEMPOTENCY_KEY_MISSING;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;

import io.quarkus.security.identity.SecurityIdentity;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.ext.Provider;
import java.util.Set;
import org.demebook.problem.Refusal;

/**
 * A browser sends its cookie along with whatever a page makes it send. A change that comes by cookie therefore has to show
 * that a page of this server sent it: it says so in Sec-Fetch-Site where the browser sends that (W3C Fetch Metadata), and a
 * POST carries a header that a page of another site cannot set without being asked first (CORS, which is off).
 */
@Provider
class OwnPagesOnly implements ContainerRequestFilter {
    private static final Set<String> READS = Set.of("GET", "HEAD", "OPTIONS");
    private static final Set<String> OTHER_SITES = Set.of("cross-site", "same-site");

    @Inject
    SecurityIdentity identity;

    @Override
    public void filter(ContainerRequestContext request) {
        var byCookie = !identity.isAnonymous() && request.getHeaderString(HttpHeaders.AUTHORIZATION) == null;
        if (!byCookie || READS.contains(request.getMethod())) {
            return;
        }
        var sentFrom = request.getHeaderString("Sec-Fetch-Site");
        if (sentFrom != null && OTHER_SITES.contains(sentFrom)) {
            throw new Refusal(NOT_ALLOWED, "A page of another site sent this. Make the change here.");
        }
        if (request.getMethod().equals("POST") && request.getHeaderString("Idempotency-Key") == null) {
            throw new Refusal(IDEMPOTENCY_KEY_MISSING, "Send a header Idempotency-Key with a fresh value.");
        }
    }
}
