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
import org.demebook.registry.AnimalView;
import org.demebook.registry.Localities.StatedLocality;
import org.demebook.registry.LocalityClaim.Certainty;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.jboss.resteasy.reactive.RestPath;

/** Which locality an animal is claimed to be of. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class LocalityPage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance locality(AnimalView animal, Typed typed, Choices choices);
    }

    @Inject
    Corrections corrections;

    @Inject
    org.demebook.registry.Corrections registry;

    @Inject
    Forms forms;

    @Inject
    Pages pages;

    @GET
    @Path("{number}/locality")
    public Response form(@RestPath String population, @RestPath String number) {
        return corrections.open(population, number, LocalityPage::known, this::page);
    }

    @POST
    @Path("{number}/locality")
    public Response claim(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        return corrections.make(
                population,
                number,
                form,
                (by, typed, ifMatch) -> registry.locality(
                        by, number, ifMatch, forms.read(typed, StatedLocality.class, Corrections.REVISION)),
                this::page,
                "");
    }

    private TemplateInstance page(AnimalView animal, Typed typed) {
        return Templates.locality(animal, typed, Choices.of(pages));
    }

    private static Typed known(AnimalView animal) {
        var claim = animal.locality();
        return claim == null
                ? Typed.nothing().with("certainty", Certainty.STATED.word())
                : Typed.nothing()
                        .with("locality", claim.locality())
                        .with("certainty", claim.certainty().word());
    }
}
