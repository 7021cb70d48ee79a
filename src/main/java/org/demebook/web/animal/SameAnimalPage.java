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
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.registry.SameAnimalClaims;
import org.demebook.registry.SameAnimalClaims.ClaimView;
import org.demebook.registry.SameAnimalClaims.NewClaim;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** That two records are one animal. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class SameAnimalPage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance sameAnimal(
                AnimalView animal, List<ClaimView> claims, boolean inHand, Typed typed);
    }

    @Inject
    SameAnimalClaims claims;

    @Inject
    Animals animals;

    @Inject
    Forms forms;

    @Inject
    Pages pages;

    @Inject
    Visit visit;

    @GET
    @Path("animals/{number}/same-animal-claims")
    public Response claims(@RestPath String population, @RestPath String number) {
        return pages.show(page(visit.in(population), number, Typed.nothing()));
    }

    @POST
    @Path("animals/{number}/same-animal-claims")
    public Response claim(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var claim = forms.read(typed, NewClaim.class);
                    claims.claim(by, number, claim.other(), claim.evidence());
                    return address(number);
                },
                again -> page(by, number, again));
    }

    @POST
    @Path("same-animal-claims/{claim}/confirmation")
    public Response confirm(@RestPath String population, @RestPath UUID claim, MultivaluedMap<String, String> form) {
        return answer(visit.in(population), form, by -> claims.confirm(by, claim));
    }

    @POST
    @Path("same-animal-claims/{claim}/reversal")
    public Response reverse(@RestPath String population, @RestPath UUID claim, MultivaluedMap<String, String> form) {
        return answer(visit.in(population), form, by -> claims.reverse(by, claim));
    }

    private interface Answer {
        ClaimView give(Standing by);
    }

    private Response answer(Standing by, MultivaluedMap<String, String> form, Answer answer) {
        var typed = Typed.of(form);
        var number = typed.value("animal");
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    answer.give(by);
                    return address(number);
                },
                again -> page(by, number, again));
    }

    private String address(String number) {
        return visit.getBase() + "/animals/" + Animals.number(number) + "/same-animal-claims";
    }

    private TemplateInstance page(Standing by, String number, Typed typed) {
        var animal = animals.get(by, number);
        return Templates.sameAnimal(animal, claims.about(by, number), animal.revision() != null, typed);
    }
}
