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
import java.util.List;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Corrections.StatedParentage;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.jboss.resteasy.reactive.RestPath;

/** Who the parents are, as it is known now. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class ParentagePage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance parentage(AnimalView animal, Typed typed, Choices choices);
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
    @Path("{number}/parentage")
    public Response form(@RestPath String population, @RestPath String number) {
        return corrections.open(population, number, ParentagePage::known, this::page);
    }

    @POST
    @Path("{number}/parentage")
    public Response state(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        return corrections.make(
                population,
                number,
                form,
                (by, typed, ifMatch) -> registry.parentage(
                        by, number, ifMatch, forms.read(typed, StatedParentage.class, Corrections.REVISION)),
                this::page,
                "");
    }

    private TemplateInstance page(AnimalView animal, Typed typed) {
        return Templates.parentage(animal, typed, Choices.of(pages));
    }

    private static Typed known(AnimalView animal) {
        var sire = animal.sire();
        var typed = Typed.nothing()
                .with("dam", animal.dam())
                .with("sire.kind", sire.kind())
                .with("sire.animal", sire.animal())
                .with("sire.doubtful", sire.doubtful())
                .with("sire.wholeLitter", sire.wholeLitter())
                .with("sire.fusion", sire.fusion())
                .with("sire.secondDivision", sire.secondDivision());
        List<StatedCandidate> candidates = sire.candidates() == null ? List.of() : sire.candidates();
        for (int i = 0; i < candidates.size(); i++) {
            typed.with(
                            "sire.candidates[%d].animal".formatted(i),
                            candidates.get(i).animal())
                    .with(
                            "sire.candidates[%d].probability".formatted(i),
                            candidates.get(i).probability());
        }
        return typed;
    }
}
