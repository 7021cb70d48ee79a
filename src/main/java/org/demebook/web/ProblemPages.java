package org.demebook.web;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.ext.Provider;
import java.lang.annotation.Annotation;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import org.demebook.problem.Problem;

/**
 * What a browser gets in place of a problem as JSON: a page that says the same; and who is not signed in is sent to sign in,
 * and back afterwards. Also the headers of every page: it loads and runs what comes from here, in files, and nothing else.
 */
@Provider
class ProblemPages implements ContainerResponseFilter {
    static final String WHERE_TO = "demebook-to";

    private static final String SECURITY_POLICY =
            "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none'; frame-ancestors 'none'; form-action 'self'";
    private static final int TEN_MINUTES = 600;

    @CheckedTemplate(basePath = "web", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance problem(Problem problem);
    }

    @Inject
    Pages pages;

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        if (response.getEntity() instanceof Problem problem && isForBrowser(request)) {
            if (problem.status() == 401 && request.getMethod().equals("GET")) {
                sendToSignIn(request, response);
            } else {
                response.setEntity(
                        pages.written(Templates.problem(problem)), new Annotation[0], MediaType.valueOf(Pages.HTML));
            }
        }
        if (MediaType.TEXT_HTML_TYPE.isCompatible(response.getMediaType())) {
            putHeaders(response);
        }
    }

    private static boolean isForBrowser(ContainerRequestContext request) {
        return !request.getUriInfo().getPath().startsWith("/api/")
                && request.getAcceptableMediaTypes().stream()
                        .anyMatch(type -> !type.isWildcardType() && MediaType.TEXT_HTML_TYPE.isCompatible(type));
    }

    private static void sendToSignIn(ContainerRequestContext request, ContainerResponseContext response) {
        response.setEntity(null);
        response.setStatus(303);
        response.getHeaders().remove(HttpHeaders.WWW_AUTHENTICATE);
        response.getHeaders().putSingle(HttpHeaders.LOCATION, URI.create(SignInPage.PATH));
        response.getHeaders()
                .add(
                        HttpHeaders.SET_COOKIE,
                        new NewCookie.Builder(WHERE_TO)
                                .value(WhereTo.kept(request.getUriInfo().getRequestUri()))
                                .path(SignInPage.PATH)
                                .maxAge(TEN_MINUTES)
                                .httpOnly(true)
                                .sameSite(NewCookie.SameSite.LAX)
                                .build());
    }

    private static void putHeaders(ContainerResponseContext response) {
        var headers = response.getHeaders();
        headers.computeIfAbsent("Content-Security-Policy", name -> one(SECURITY_POLICY));
        headers.computeIfAbsent("X-Content-Type-Options", name -> one("nosniff"));
        headers.computeIfAbsent("Referrer-Policy", name -> one("same-origin"));
        headers.computeIfAbsent("Permissions-Policy", name -> one("geolocation=(), microphone=(), camera=()"));
        headers.computeIfAbsent(HttpHeaders.CACHE_CONTROL, name -> one("private, no-cache"));
        headers.add(HttpHeaders.VARY, "Accept, Accept-Language, Cookie");
    }

    private static List<Object> one(String value) {
        return new ArrayList<>(List.of(value));
    }
}
