package org.demebook.web.members;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.Optional;
import org.demebook.keeper.Accounts;
import org.demebook.keeper.Asker;
import org.demebook.keeper.InvitationView;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.paper.QrCode;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Invitations by one-time link, into a population or to this node alone. */
@Path("/invitations")
@Produces(Pages.HTML)
class InvitationsPage {
    @CheckedTemplate(basePath = "members", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance invite(Typed typed);

        static native TemplateInstance invitation(InvitationView invitation, String link, QrCode qr, String back);
    }

    /** @param role member or coordinator; a member when nothing is said */
    record Wanted(@Nullable Role role) {}

    @ConfigProperty(name = "demebook.public-url")
    Optional<URI> publicUrl;

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Accounts accounts;

    @Inject
    Once once;

    @GET
    public Response invite() {
        if (!visit.asker().administrator()) {
            throw new Refusal(
                    ProblemType.NOT_ALLOWED, "Only an administrator invites to the node alone; name your population.");
        }
        return pages.show(Templates.invite(Typed.nothing()));
    }

    @POST
    public Response invite(MultivaluedMap<String, String> form, @Context UriInfo uri) {
        return made(visit.asker(), null, Typed.of(form), uri, "/populations");
    }

    Response made(Asker by, @Nullable Standing into, Typed typed, UriInfo uri, String back) {
        var role = forms.read(typed, Wanted.class).role();
        InvitationView[] made = new InvitationView[1];
        once.answer(by.keeperId(), typed.value("role"), () -> {
            made[0] = accounts.invite(by, into, role);
            return Answer.ok(null, made[0]).shownOnce();
        });
        var link = address(uri, made[0].secret());
        return InvitationPage.guarded(pages.show(Templates.invitation(made[0], link, QrCode.of(link), back)));
    }

    private String address(UriInfo uri, String secret) {
        var base = publicUrl.orElseGet(uri::getBaseUri).toString();
        return base + (base.endsWith("/") ? "" : "/") + "invitations/" + secret;
    }
}
