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
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.demebook.crossing.CrossingAcceptance;
import org.demebook.crossing.CrossingState;
import org.demebook.crossing.Crossings;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.rest.Page;
import org.demebook.transfer.Ending;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Crossings: what is under way between this node and others, what is past; and one of them with what can be done. */
@Path("/populations/{population}/crossings")
@Produces(Pages.HTML)
class CrossingPage {
    @CheckedTemplate(basePath = "web/crossing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance crossings(
                List<CrossingRow> open, List<CrossingRow> past, boolean first, @Nullable String next);

        static native TemplateInstance crossing(CrossingRow row, List<CollectionView> collections, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Crossings crossings;

    @Inject
    Keepers keepers;

    @Inject
    CrossingWords told;

    @GET
    public Response list(@RestPath String population, @QueryParam("after") @Nullable String after) {
        var by = visit.in(population);
        var open = new ArrayList<CrossingRow>();
        if (after == null) {
            for (var state : List.of(CrossingState.ON_ITS_WAY, CrossingState.ACCEPTED, CrossingState.OFFERED)) {
                told.rows(crossings.page(by, state, null, Page.MOST).items()).stream()
                        .filter(row -> !row.isWaiting())
                        .forEach(open::add);
            }
        }
        var page = crossings.page(by, null, Page.after(after), Page.USUAL);
        var past = told.rows(page.items()).stream().filter(row -> !row.isOpen()).toList();
        return pages.show(Templates.crossings(open, past, after == null, page.next()));
    }

    @GET
    @Path("{crossing}")
    public Response crossing(@RestPath String population, @RestPath UUID crossing) {
        return pages.show(page(visit.in(population), crossing, Typed.nothing()));
    }

    @POST
    @Path("{crossing}/acceptance")
    public Response accept(@RestPath String population, @RestPath UUID crossing, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(
                by, crossing, typed, () -> crossings.accept(by, crossing, forms.read(typed, CrossingAcceptance.class)));
    }

    @POST
    @Path("{crossing}/refusal")
    public Response refuse(@RestPath String population, @RestPath UUID crossing, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return answer(by, crossing, Typed.of(form), () -> crossings.refuse(by, crossing));
    }

    @POST
    @Path("{crossing}/withdrawal")
    public Response withdraw(
            @RestPath String population, @RestPath UUID crossing, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(by, crossing, typed, () -> crossings.withdraw(by, crossing, forms.read(typed, Ending.class)));
    }

    private Response answer(Standing by, UUID crossing, Typed typed, Supplier<?> work) {
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    work.get();
                    return visit.getBase() + "/crossings/" + crossing;
                },
                again -> page(by, crossing, again));
    }

    private TemplateInstance page(Standing by, UUID crossing, Typed typed) {
        return Templates.crossing(told.row(crossings.get(by, crossing)), keepers.collections(by), typed);
    }
}
