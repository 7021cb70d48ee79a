package org.demebook.web;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.demebook.census.Census;
import org.demebook.census.CountReleaseView;
import org.demebook.keeper.SignedIn;
import org.demebook.registry.PopulationView;

/** The first page: for who is signed in the way to their population, for everybody else what this is. */
@Path("/")
@Produces(Pages.HTML)
class WelcomePage {
    private static final int MOST_COUNTS = 100;

    @CheckedTemplate(basePath = "web", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance welcome(List<CountReleaseView> counts);

        static native TemplateInstance populations(List<PopulationView> populations);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    SignedIn signedIn;

    @Inject
    Census census;

    @GET
    public Response welcome() {
        if (signedIn.askerIfAny().isEmpty()) {
            return pages.show(Templates.welcome(census.latestOfEach(MOST_COUNTS)));
        }
        visit.asker();
        var mine = visit.getPopulations();
        return mine.size() == 1
                ? pages.goTo("/populations/" + mine.get(0).code() + "/today")
                : pages.show(Templates.populations(mine));
    }
}
