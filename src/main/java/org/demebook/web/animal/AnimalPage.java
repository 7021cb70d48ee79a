package org.demebook.web.animal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.stream.Collectors;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.AncestryView;
import org.demebook.ancestry.ElsewhereView;
import org.demebook.registry.Animals;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** One animal, as far as the one who looks may know it. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class AnimalPage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance animal(Portrait of);

        static native TemplateInstance elsewhere(ElsewhereView of, String founders);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Portraits portraits;

    @Inject
    Animals animals;

    @Inject
    Ancestries ancestries;

    @GET
    @Path("{number}")
    public Response animal(@RestPath String population, @RestPath String number) {
        var by = visit.in(population);
        if (animals.find(by, number).isEmpty()) {
            var elsewhere = ancestries.elsewhere(by, number);
            if (elsewhere.isPresent()) {
                return pages.show(Templates.elsewhere(elsewhere.get(), founders(elsewhere.get())));
            }
        }
        return pages.show(Templates.animal(portraits.of(by, number)));
    }

    private static String founders(ElsewhereView of) {
        return of.ancestry().founders().stream()
                .map(AncestryView.Contribution::animal)
                .collect(Collectors.joining(", "));
    }
}
