package org.demebook.web.animal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
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
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Portraits portraits;

    @GET
    @Path("{number}")
    public Response animal(@RestPath String population, @RestPath String number) {
        return pages.show(Templates.animal(portraits.of(visit.in(population), number)));
    }
}
