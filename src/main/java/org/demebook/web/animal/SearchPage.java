package org.demebook.web.animal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import org.demebook.registry.AnimalSearch;
import org.demebook.registry.AnimalSearch.Found;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Finds an animal by what one has in hand; what is found beyond doubt is opened at once. */
@Path("/populations/{population}/search")
@Produces(Pages.HTML)
class SearchPage {
    private static final int MOST = 25;

    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance search(String asked, List<Result> results, boolean more);
    }

    /**
     * @param key by which it is opened; empty for those behind the ninth
     * @param name what the one who looks calls it; empty where they have no name for it
     */
    public record Result(Found found, String key, String name) {}

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    AnimalSearch search;

    @GET
    public Response search(@RestPath String population, @RestQuery("q") @Nullable String asked) {
        var by = visit.in(population);
        var words = asked == null ? "" : asked.strip();
        var found = search.find(by, words, MOST + 1);
        var exact = found.stream().filter(Found::exact).toList();
        if (exact.size() == 1) {
            return pages.goTo(
                    visit.getBase() + "/animals/" + exact.get(0).animal().number());
        }
        var shown = found.subList(0, Math.min(found.size(), MOST));
        var results = new ArrayList<Result>();
        for (var one : shown) {
            int place = results.size() + 1;
            results.add(new Result(one, place <= 9 ? Integer.toString(place) : "", Listed.name(one.animal())));
        }
        return pages.show(Templates.search(words, results, found.size() > MOST));
    }
}
