package org.demebook.web.crossing;

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
import org.demebook.crossing.AdoptedAnimalView;
import org.demebook.crossing.AdoptedAnimals;
import org.demebook.crossing.Placement;
import org.demebook.keeper.Standing;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** Animals of a node that is gone, which this one adopted: those that wait for a keeper, and one of them to be given to hers. */
@Path("/populations/{population}/adopted-animals")
@Produces(Pages.HTML)
class AdoptedPage {
    @CheckedTemplate(basePath = "web/crossing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance adoptedAnimals(List<AdoptedAnimalView> animals);

        static native TemplateInstance adoptedAnimal(AdoptedAnimalView animal, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    AdoptedAnimals adopted;

    @GET
    public Response list(@RestPath String population) {
        return pages.show(Templates.adoptedAnimals(adopted.waiting(visit.in(population))));
    }

    @GET
    @Path("{animal}")
    public Response open(@RestPath String population, @RestPath String animal) {
        return pages.show(page(visit.in(population), animal, Typed.nothing()));
    }

    @POST
    @Path("{animal}/placement")
    public Response place(@RestPath String population, @RestPath String animal, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    adopted.place(by, animal, forms.read(typed, Placement.class));
                    return visit.getBase() + "/adopted-animals";
                },
                again -> page(by, animal, again));
    }

    private TemplateInstance page(Standing by, String animal, Typed typed) {
        var found = adopted.waiting(by).stream()
                .filter(one -> one.animal().equals(animal))
                .findFirst()
                .orElseThrow(() -> new Refusal(
                        ProblemType.NO_SUCH_ANIMAL, "No adopted animal of that name waits for a keeper on this node."));
        return Templates.adoptedAnimal(found, typed);
    }
}
