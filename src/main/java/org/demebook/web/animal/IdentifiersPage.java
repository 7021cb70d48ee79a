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
import org.demebook.registry.IdentifierView;
import org.demebook.registry.NewIdentifier;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.jboss.resteasy.reactive.RestPath;

/** What an animal is known by besides its number. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class IdentifiersPage {
    private static final String PATH = "/identifiers";

    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance identifiers(AnimalView animal, Typed typed, Choices choices);
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
    @Path("{number}/identifiers")
    public Response form(@RestPath String population, @RestPath String number) {
        return corrections.open(population, number, animal -> Typed.nothing(), this::page);
    }

    @POST
    @Path("{number}/identifiers")
    public Response add(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        return corrections.once(
                population,
                number,
                form,
                (by, typed, ifMatch) -> registry.addIdentifier(by, number, forms.read(typed, NewIdentifier.class)),
                this::page,
                PATH);
    }

    /** What it is called may hold any letter, and so stands in the form and not in its address. */
    @POST
    @Path("{number}/identifiers/end")
    public Response end(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        return corrections.make(
                population,
                number,
                form,
                (by, typed, ifMatch) -> registry.endIdentifier(
                        by, number, ifMatch, new IdentifierView(typed.value("kind"), typed.value("value"))),
                this::page,
                PATH);
    }

    private TemplateInstance page(AnimalView animal, Typed typed) {
        return Templates.identifiers(animal, typed, Choices.of(pages));
    }
}
