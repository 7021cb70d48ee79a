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
import org.demebook.crossing.Crossings;
import org.demebook.crossing.NewCrossing;
import org.demebook.keeper.Standing;
import org.demebook.problem.Rule;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.transfer.Kind;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** To give an animal to a keeper on another node. */
@Path("/populations/{population}/crossings")
@Produces(Pages.HTML)
class CrossingOfferPage {
    @CheckedTemplate(basePath = "web/crossing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance offer(
                AnimalView animal, List<Kind> kinds, List<String> nodes, boolean gravid, Typed typed);
    }

    /** Ticks of the form that are sent only when they are set. */
    private static final List<String> TICKS = List.of("withMarks", "withTransponders");

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Animals animals;

    @Inject
    Crossings crossings;

    /** @param animal studbook number; without one it is chosen first */
    @GET
    @Path("new")
    public Response open(@RestPath String population, @QueryParam("animal") @Nullable String animal) {
        var by = visit.in(population);
        if (animal == null || animal.isBlank()) {
            return pages.goTo(visit.getBase() + "/transfers/new");
        }
        var found = animals.get(by, animal);
        var typed = Typed.nothing()
                .with("animal", found.number())
                .with("kind", Kind.SALE.word())
                .with("withMarks", "true")
                .with("withTransponders", "true");
        return pages.show(page(by, found, typed));
    }

    @POST
    public Response offer(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var offered = crossings.offer(by, forms.read(ticked(typed), NewCrossing.class));
                    return visit.getBase() + "/crossings/" + offered.id();
                },
                again -> page(by, animals.get(by, again.value("animal")), again));
    }

    /** A browser leaves out what is not ticked; here that means no. */
    private static Typed ticked(Typed typed) {
        var all = typed;
        for (var tick : TICKS) {
            all = typed.has(tick, "true") ? all : all.with(tick, "false");
        }
        return all;
    }

    private TemplateInstance page(Standing by, AnimalView animal, Typed typed) {
        return Templates.offer(
                animal, List.of(Kind.SALE, Kind.GIFT, Kind.EXCHANGE), crossings.nodes(by), isGravid(typed), typed);
    }

    /** Whether a refusal said so, this time or before. */
    private static boolean isGravid(Typed typed) {
        return typed.has("leave[0].rule", Rule.GRAVID_TRANSFER.word())
                || typed.getProblem() != null
                        && typed.getProblem().findings().stream()
                                .anyMatch(finding -> finding.rule() == Rule.GRAVID_TRANSFER);
    }
}
