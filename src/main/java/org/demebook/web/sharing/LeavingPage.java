package org.demebook.web.sharing;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.demebook.keeper.BrowserSession;
import org.demebook.keeper.SignedIn;
import org.demebook.leaving.ErasureView;
import org.demebook.leaving.Erasures;
import org.demebook.leaving.NewErasure;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** Leaving a population for good, with everything of one's own taken out first. */
@Path("/populations/{population}/erasure")
@Produces(Pages.HTML)
class LeavingPage {
    @CheckedTemplate(basePath = "sharing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance leaving(ErasureView erasure, Typed typed);
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
    Erasures erasures;

    @GET
    public Response preview(@RestPath String population) {
        return pages.show(Templates.leaving(erasures.preview(visit.in(population)), Typed.nothing()));
    }

    @POST
    public Response erase(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var asker = visit.asker();
                    erasures.erase(asker, by, forms.read(typed, NewErasure.class));
                    signedIn.forget(asker);
                    // who belongs to another population signs in again
                    return Response.seeOther(URI.create("/"))
                            .cookie(BrowserSession.ended())
                            .header("Clear-Site-Data", "\"cache\", \"storage\"")
                            .build();
                },
                again -> Templates.leaving(erasures.preview(by), again));
    }
}
