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
import org.demebook.registry.Corrections.Description;
import org.demebook.registry.Corrections.StatedDeath;
import org.demebook.registry.Corrections.StatedSex;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** What an animal is: its birth, origin and notes, its sex, its death. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class DescriptionPages {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance description(AnimalView animal, Typed typed, Choices choices);

        static native TemplateInstance sex(AnimalView animal, Typed typed, Choices choices);

        static native TemplateInstance death(AnimalView animal, Typed typed);
    }

    @Inject
    Corrections corrections;

    @Inject
    org.demebook.registry.Corrections registry;

    @Inject
    Forms forms;

    @Inject
    Pages pages;

    @Inject
    Visit visit;

    @GET
    @Path("{number}/description")
    public Response description(@RestPath String population, @RestPath String number) {
        return corrections.open(population, number, DescriptionPages::description, this::description);
    }

    @POST
    @Path("{number}/description")
    public Response describe(
            @RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        return corrections.make(
                population,
                number,
                form,
                (by, typed, ifMatch) -> registry.description(
                        by, number, ifMatch, forms.read(typed, Description.class, Corrections.REVISION)),
                this::description,
                "");
    }

    private TemplateInstance description(AnimalView animal, Typed typed) {
        return Templates.description(animal, typed, Choices.of(pages));
    }

    private static Typed description(AnimalView animal) {
        var known = Typed.nothing()
                .with("born", animal.born())
                .with("origin", animal.origin().word());
        var held = animal.held();
        return held == null
                ? known
                : known.with(
                                "sourceCode",
                                held.sourceCode() == null
                                        ? null
                                        : held.sourceCode().letter())
                        .with("malformed", Boolean.TRUE.equals(held.malformed()))
                        .with("notes", held.notes());
    }

    @GET
    @Path("{number}/sex")
    public Response sex(@RestPath String population, @RestPath String number) {
        return corrections.open(
                population,
                number,
                animal -> Typed.nothing().with("sex", animal.sex().word()),
                this::sex);
    }

    @POST
    @Path("{number}/sex")
    public Response determineSex(
            @RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        return corrections.make(
                population,
                number,
                form,
                (by, typed, ifMatch) ->
                        registry.sex(by, number, ifMatch, forms.read(typed, StatedSex.class, Corrections.REVISION)),
                this::sex,
                "");
    }

    private TemplateInstance sex(AnimalView animal, Typed typed) {
        return Templates.sex(animal, typed, Choices.of(pages));
    }

    @GET
    @Path("{number}/death")
    public Response death(@RestPath String population, @RestPath String number) {
        return corrections.open(population, number, this::death, Templates::death);
    }

    @POST
    @Path("{number}/death")
    public Response reportDeath(
            @RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        return corrections.make(
                population,
                number,
                form,
                (by, typed, ifMatch) ->
                        registry.death(by, number, ifMatch, forms.read(typed, StatedDeath.class, Corrections.REVISION)),
                Templates::death,
                "");
    }

    @POST
    @Path("{number}/death/withdrawal")
    public Response withdrawDeath(
            @RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        return corrections.make(
                population,
                number,
                form,
                (by, typed, ifMatch) -> registry.alive(by, number, ifMatch),
                Templates::death,
                "");
    }

    private Typed death(AnimalView animal) {
        var held = animal.held();
        return held == null || held.died() == null
                ? Typed.nothing().with("on", visit.getToday())
                : Typed.nothing().with("on", held.died()).with("cause", held.deathCause());
    }
}
