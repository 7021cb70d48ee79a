package org.demebook.web.animal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import org.demebook.problem.LeftAsIs;
import org.demebook.registry.AnimalFindings;
import org.demebook.registry.AnimalFindings.AnimalFindingsView;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** What is strained about an animal of one's own, and what was left as it is. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class FindingsPage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance findings(AnimalView animal, AnimalFindingsView found, Typed typed);
    }

    @Inject
    Corrections corrections;

    @Inject
    org.demebook.registry.Corrections registry;

    @Inject
    Animals animals;

    @Inject
    AnimalFindings findings;

    @Inject
    Forms forms;

    @Inject
    Pages pages;

    @Inject
    Visit visit;

    @GET
    @Path("{number}/findings")
    public Response findings(@RestPath String population, @RestPath String number) {
        var by = visit.in(population);
        return pages.show(Templates.findings(animals.get(by, number), findings.of(by, number), Typed.nothing()));
    }

    @POST
    @Path("{number}/findings/leaving")
    public Response leave(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return corrections.once(
                population,
                number,
                form,
                (asker, typed, ifMatch) -> registry.leave(asker, number, forms.read(typed, LeftAsIs.class)),
                (animal, typed) -> Templates.findings(animal, findings.of(by, number), typed),
                "/findings");
    }
}
