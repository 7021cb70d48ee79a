package org.demebook.web.counts;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.demebook.census.Census;
import org.demebook.keeper.SignedIn;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.rest.Page;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The published counts, for everybody. A population that published none looks like one that is not there. */
@Path("/populations/{population}/counts")
@Produces(Pages.HTML)
class CountsPage {
    @CheckedTemplate(basePath = "counts", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance counts(
                String population, String name, List<Release> releases, @Nullable String next);

        static native TemplateInstance release(Release release);
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
    public Response counts(@RestPath String population, @QueryParam("after") @Nullable String after) {
        look(population);
        var cursor = Page.after(after);
        var page = census.releases(population, cursor == null ? null : day(cursor), Page.USUAL);
        var words = pages.words(CountsMessages.class);
        var releases = page.items().stream()
                .map(release -> new Release(release, words, visit))
                .toList();
        return pages.show(Templates.counts(
                population, releases.isEmpty() ? population : releases.get(0).getName(), releases, page.next()));
    }

    @GET
    @Path("{countedOn}")
    public Response release(@RestPath String population, @RestPath String countedOn) {
        look(population);
        var view = census.get(population, day(countedOn));
        return pages.show(Templates.release(new Release(view, pages.words(CountsMessages.class), visit)));
    }

    /** As a member, if it is one; nobody has to be. */
    private void look(String population) {
        if (signedIn.askerIfAny().isPresent()) {
            visit.asker();
            if (visit.getPopulations().stream().anyMatch(mine -> mine.code().equals(population))) {
                visit.in(population);
            }
        }
    }

    private static LocalDate day(String written) {
        try {
            return LocalDate.parse(written);
        } catch (DateTimeParseException e) {
            throw new Refusal(ProblemType.BAD_PARAMETER, "Write a day as year-month-day, such as 2026-06-27.");
        }
    }
}
