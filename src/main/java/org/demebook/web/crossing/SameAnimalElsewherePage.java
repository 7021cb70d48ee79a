package org.demebook.web.crossing;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.keeper.Standing;
import org.demebook.telling.NewSameAnimalElsewhere;
import org.demebook.telling.SameAnimalElsewhereView;
import org.demebook.telling.SameAnimalsElsewhere;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** That an animal here and one of another node are one: how each claim stands, and a form for a new one. */
@Path("/populations/{population}/federation/same-animal-claims")
@Produces(Pages.HTML)
class SameAnimalElsewherePage {
    @CheckedTemplate(basePath = "web/crossing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        /** @param between what the typed animal is called between nodes; null as long as it was not */
        static native TemplateInstance sameAnimals(
                List<SameAnimalElsewhereView> claims, boolean shared, @Nullable String between, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    SameAnimalsElsewhere claims;

    /** @param animal studbook number of an animal in the hands of the one who looks, for the form */
    @GET
    public Response claims(@RestPath String population, @QueryParam("animal") @Nullable String animal) {
        var by = visit.in(population);
        if (animal == null || animal.isBlank()) {
            return pages.show(page(by, null, Typed.nothing()));
        }
        var between = claims.betweenNodes(by, animal).orElse(null);
        return pages.show(page(by, between, Typed.nothing().with("animal", animal.strip())));
    }

    @POST
    public Response claim(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(by, typed, () -> claims.claim(by, forms.read(typed, NewSameAnimalElsewhere.class)));
    }

    @POST
    @Path("{claim}/confirmation")
    public Response confirm(@RestPath String population, @RestPath UUID claim, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return answer(by, Typed.of(form), () -> claims.confirm(by, claim));
    }

    @POST
    @Path("{claim}/reversal")
    public Response reverse(@RestPath String population, @RestPath UUID claim, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return answer(by, Typed.of(form), () -> claims.reverse(by, claim));
    }

    private Response answer(Standing by, Typed typed, Supplier<SameAnimalElsewhereView> work) {
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    work.get();
                    return visit.getBase() + "/federation/same-animal-claims";
                },
                again -> page(by, null, again));
    }

    private TemplateInstance page(Standing by, @Nullable String between, Typed typed) {
        return Templates.sameAnimals(claims.about(by), claims.isPossible(by), between, typed);
    }
}
