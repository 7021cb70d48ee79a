package org.demebook.web.members;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.demebook.keeper.Acceptance;
import org.demebook.keeper.Accounts;
import org.demebook.keeper.Accounts.InvitedTo;
import org.demebook.keeper.Attempts;
import org.demebook.keeper.BrowserSession;
import org.demebook.keeper.Role;
import org.demebook.keeper.SignIn;
import org.demebook.keeper.SignedIn;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/**
 * Where an invited one comes in by their link: with an account of their own, a fresh one, or that of a Keycloak. The address is
 * a secret: no page that is opened from here hears of it, and no cache keeps it.
 */
@Path("/invitations/{secret}")
@Produces(Pages.HTML)
class InvitationPage {
    @CheckedTemplate(basePath = "members", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance invited(String secret, @Nullable PopulationView into, Role role, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    SignedIn signedIn;

    @Inject
    Accounts accounts;

    @Inject
    Attempts attempts;

    @Inject
    Populations populations;

    @GET
    public Response invited(@RestPath String secret, @Context HttpServerRequest request) {
        if (!accounts.isLocal()) {
            visit.asker(); // who is nobody yet is sent to sign in, and comes back
        }
        signedIn.askerIfAny().ifPresent(here -> visit.asker());
        return guarded(pages.show(page(secret, request, Typed.nothing())));
    }

    /** Sends who has an account to sign in, and back. */
    @GET
    @Path("sign-in")
    public Response signIn(@RestPath String secret) {
        visit.asker();
        return guarded(pages.goTo("/invitations/" + secret));
    }

    /** Opens an account; the browser is signed in with it. */
    @POST
    @Path("acceptance")
    public Response accept(
            @RestPath String secret,
            MultivaluedMap<String, String> form,
            @Context HttpServerRequest request,
            @Context UriInfo uri) {
        var typed = Typed.of(form);
        // nobody is signed in yet: the link itself says whose key this is
        var holder = UUID.nameUUIDFromBytes(secret.getBytes(StandardCharsets.UTF_8));
        var answer = forms.once(
                holder,
                typed,
                () -> {
                    var acceptance = forms.read(typed.with("secret", secret), Acceptance.class);
                    var first = first(attempts.counted(request, () -> accounts.invitedTo(secret))
                            .orElse(null));
                    accounts.accept(acceptance);
                    return first;
                },
                again -> page(secret, request, again));
        if (answer.getStatus() != Response.Status.SEE_OTHER.getStatusCode()) {
            return guarded(answer);
        }
        var token = accounts.browserToken(new SignIn(typed.value("name"), typed.value("password")));
        var secure = uri.getBaseUri().getScheme().equals("https");
        return guarded(Response.fromResponse(answer)
                .cookie(BrowserSession.cookie(token, secure))
                .build());
    }

    /** Who is signed in already joins with the account that they have. */
    @POST
    @Path("joining")
    public Response join(
            @RestPath String secret, MultivaluedMap<String, String> form, @Context HttpServerRequest request) {
        var by = visit.asker();
        return guarded(forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    var first = first(attempts.counted(request, () -> accounts.invitedTo(secret))
                            .orElse(null));
                    accounts.accept(by, secret);
                    return first;
                },
                again -> page(secret, request, again)));
    }

    private String first(@Nullable InvitedTo invitation) {
        return invitation == null
                ? "/populations"
                : "/populations/" + populations.codeOf(invitation.populationId()) + "/members";
    }

    private TemplateInstance page(String secret, HttpServerRequest request, Typed typed) {
        var to = attempts.counted(request, () -> accounts.invitedTo(secret)).orElse(null);
        return Templates.invited(
                secret,
                to == null ? null : populations.get(to.populationId()),
                to == null ? Role.MEMBER : to.role(),
                typed);
    }

    /**
     * With strict-origin the path is told to nobody, not even to this server. No-referrer would hide no more, and would take the
     * origin from the form as well (Fetch standard, "append a request Origin header"), by which the form shows that it is ours.
     */
    static Response guarded(Response response) {
        return Response.fromResponse(response)
                .header("Referrer-Policy", "strict-origin")
                .header("Cache-Control", "no-store")
                .build();
    }
}
