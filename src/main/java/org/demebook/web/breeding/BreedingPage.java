package org.demebook.web.breeding;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.demebook.breeding.Cycles;
import org.demebook.breeding.IntroductionView;
import org.demebook.breeding.Introductions;
import org.demebook.rest.Page;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** All pairs that are together now, the births that are awaited, and the introductions that are over. */
@Path("/populations/{population}/breeding")
@Produces(Pages.HTML)
class BreedingPage {
    private static final int OVER = 25;

    @CheckedTemplate(basePath = "breeding", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance breeding(
                List<IntroductionView> together,
                List<Awaited> awaited,
                List<IntroductionView> over,
                @Nullable String next,
                boolean first);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Introductions introductions;

    @Inject
    Cycles cycles;

    @GET
    public Response breeding(@RestPath String population, @RestQuery @Nullable String after) {
        var by = visit.in(population);
        boolean first = after == null;
        var over = introductions.page(by, null, false, Page.after(after), OVER);
        return pages.show(Templates.breeding(
                first ? introductions.page(by, null, true, null, Page.MOST).items() : List.of(),
                first
                        ? cycles.awaited(by, visit.getToday()).stream()
                                .map(Awaited::of)
                                .toList()
                        : List.of(),
                over.items(),
                over.next(),
                first));
    }
}
