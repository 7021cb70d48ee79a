package org.demebook.web.today;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.demebook.care.SilenceView;
import org.demebook.care.Silences;
import org.demebook.keeper.Standing;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** What the keeper does not want to hear of, and to hear of it again. */
@Path("/populations/{population}/care-silences")
@Produces(Pages.HTML)
class SilencePage {
    @CheckedTemplate(basePath = "today", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance silences(List<SilenceView> silences, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Silences silences;

    @GET
    public Response list(@RestPath String population) {
        return pages.show(page(visit.in(population), Typed.nothing()));
    }

    @POST
    @Path("{silence}/ending")
    public Response end(@RestPath String population, @RestPath UUID silence, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    silences.end(by, silence);
                    return visit.getBase() + "/care-silences";
                },
                refused -> page(by, refused));
    }

    private TemplateInstance page(Standing by, Typed typed) {
        return Templates.silences(silences.all(by), typed);
    }
}
