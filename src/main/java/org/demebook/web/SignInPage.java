package org.demebook.web;

import io.quarkus.oidc.OIDCException;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.ws.rs.CookieParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import org.demebook.keeper.Accounts;
import org.demebook.keeper.Attempts;
import org.demebook.keeper.BrowserSession;
import org.demebook.keeper.SignIn;
import org.jspecify.annotations.Nullable;

/**
 * Where a browser signs in: with name and password where accounts are kept here; where a Keycloak keeps them it is sent there
 * before it gets here, and comes back with a cookie. Either way it goes on to where it wanted to be.
 */
@Path("/")
@Produces(Pages.HTML)
class SignInPage {
    static final String PATH = "/sign-in";
    private static final int UNAVAILABLE = 503;

    @CheckedTemplate(basePath = "web", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance signIn(Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Accounts accounts;

    @Inject
    Attempts attempts;

    @GET
    @Path(PATH)
    public Response signIn(@CookieParam(ProblemPages.WHERE_TO) @Nullable String wanted) {
        if (!accounts.isLocal()) {
            visit.asker();
            return Response.seeOther(WhereTo.of(wanted)).build();
        }
        return pages.show(Templates.signIn(Typed.nothing()));
    }

    @POST
    @Path(PATH)
    public Response signIn(
            MultivaluedMap<String, String> form,
            @CookieParam(ProblemPages.WHERE_TO) @Nullable String wanted,
            @Context HttpServerRequest request,
            @Context UriInfo uri) {
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var given = forms.read(typed, SignIn.class);
                    var token = attempts.counted(request, () -> accounts.browserToken(given));
                    return Response.seeOther(WhereTo.of(wanted))
                            .cookie(BrowserSession.cookie(token, isSecure(uri)))
                            .build();
                },
                Templates::signIn);
    }

    static boolean isSecure(UriInfo uri) {
        return uri.getBaseUri().getScheme().equals("https");
    }

    /** Ends the session here; where a Keycloak signs in, the framework answers before. */
    @POST
    @Path("/sign-out")
    public Response signOut() {
        return Response.seeOther(URI.create("/"))
                .cookie(BrowserSession.ended())
                .header("Clear-Site-Data", "\"cache\"") // pages kept on the device; not what was not sent yet
                .build();
    }

    // Keycloak is asked before the request reaches a resource, so nobody else would put its silence into words
    void whenKeycloakIsAway(@Observes Router router) {
        router.route(PATH).failureHandler(SignInPage::tell);
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
