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
import org.demebook.keeper.Standing;
import org.demebook.planning.BreedingHoldView;
import org.demebook.planning.BreedingHolds;
import org.demebook.planning.HoldWord;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** Whether an animal is to be bred for now; a coordinator says so of animals of others too. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class BreedingHoldPage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance hold(AnimalView animal, BreedingHoldView hold, Typed typed);
    }

    @Inject
    BreedingHolds holds;

    @Inject
    Animals animals;

    @Inject
    Forms forms;

    @Inject
    Pages pages;

    @Inject
    Visit visit;

    @GET
    @Path("{number}/breeding-hold")
    public Response form(@RestPath String population, @RestPath String number) {
        return pages.show(page(visit.in(population), number, Typed.nothing()));
    }

    @POST
    @Path("{number}/breeding-hold")
    public Response set(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    holds.set(by, number, forms.read(typed, HoldWord.class));
                    return pages.goTo(address(number));
                },
                again -> page(by, number, again));
    }

    @POST
    @Path("{number}/breeding-hold/lifting")
    public Response lift(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    holds.lift(by, number, forms.read(typed, HoldWord.class));
                    return address(number);
                },
                again -> page(by, number, again));
    }

    private String address(String number) {
        return visit.getBase() + "/animals/" + Animals.number(number);
    }

    private TemplateInstance page(Standing by, String number, Typed typed) {
        return Templates.hold(animals.get(by, number), holds.get(by, number), typed);
    }
}
