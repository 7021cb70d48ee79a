package org.demebook.web.litter;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.demebook.breeding.Cycles;
import org.demebook.litter.Litters;
import org.demebook.rest.Page;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.demebook.web.breeding.Awaited;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The births that are awaited, and the litters that were born. */
@Path("/populations/{population}/litters")
@Produces(Pages.HTML)
class LittersPage {
    @CheckedTemplate(basePath = "litter", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance litters(
                List<Awaited> awaited, List<Ova> litters, @Nullable String next, boolean first);

        static native TemplateInstance offline();
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Litters litters;

    @Inject
    Cycles cycles;

    @GET
    public Response list(@RestPath String population, @RestQuery @Nullable String after) {
        var by = visit.in(population);
        var page = litters.page(by, null, Page.after(after), Page.USUAL);
        var awaited = after == null
                ? cycles.awaited(by, visit.getToday()).stream().map(Awaited::of).toList()
                : List.<Awaited>of();
        return pages.show(
                Templates.litters(awaited, page.items().stream().map(Ova::of).toList(), page.next(), after == null));
    }

    /** What a device shows that cannot reach the server, of a page that it did not keep. */
    @GET
    @Path("offline")
    public Response offline(@RestPath String population) {
        visit.in(population);
        return pages.show(Templates.offline());
    }
}
