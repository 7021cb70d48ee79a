package org.demebook.web.handover;

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
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.demebook.transfer.DisputeState;
import org.demebook.transfer.DisputeView;
import org.demebook.transfer.Disputes;
import org.demebook.transfer.Ending;
import org.demebook.transfer.NewDispute;
import org.demebook.transfer.Outcome;
import org.demebook.transfer.Settlement;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Animals that are reported in two places: to report one, to give way, to decide. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class DisputePage {
    @CheckedTemplate(basePath = "web/handover", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance disputes(List<DisputeView> disputes, @Nullable String next);

        static native TemplateInstance dispute(DisputeView dispute, boolean open, Outcome[] outcomes, Typed typed);

        static native TemplateInstance report(
                String number, List<DisputeView> disputes, List<CollectionView> collections, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Disputes disputes;

    @Inject
    Keepers keepers;

    @GET
    @Path("disputes")
    public Response list(@RestPath String population, @QueryParam("after") @Nullable String after) {
        var page = disputes.page(visit.in(population), null, Page.after(after), Page.USUAL);
        return pages.show(Templates.disputes(page.items(), page.next()));
    }

    @GET
    @Path("disputes/{dispute}")
    public Response dispute(@RestPath String population, @RestPath UUID dispute) {
        return pages.show(page(visit.in(population), dispute, Typed.nothing()));
    }

    @POST
    @Path("disputes/{dispute}/withdrawal")
    public Response withdraw(@RestPath String population, @RestPath UUID dispute, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(by, dispute, typed, () -> disputes.withdraw(by, dispute, forms.read(typed, Ending.class)));
    }

    @POST
    @Path("disputes/{dispute}/concession")
    public Response concede(@RestPath String population, @RestPath UUID dispute, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(by, dispute, typed, () -> disputes.concede(by, dispute, forms.read(typed, Ending.class)));
    }

    @POST
    @Path("disputes/{dispute}/settlement")
    public Response settle(@RestPath String population, @RestPath UUID dispute, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return answer(by, dispute, typed, () -> disputes.settle(by, dispute, forms.read(typed, Settlement.class)));
    }

    private Response answer(Standing by, UUID dispute, Typed typed, Supplier<DisputeView> work) {
        return forms.once(by.keeperId(), typed, () -> address(work.get().id()), again -> page(by, dispute, again));
    }

    private TemplateInstance page(Standing by, UUID dispute, Typed typed) {
        var view = disputes.get(by, dispute);
        return Templates.dispute(view, view.state() == DisputeState.OPEN, Outcome.values(), typed);
    }

    private String address(UUID dispute) {
        return visit.getBase() + "/disputes/" + dispute;
    }

    // ── of an animal ─────────────────────────────────────────────────────────────────────────────────────────────────

    @GET
    @Path("animals/{number}/disputes")
    public Response ofAnimal(@RestPath String population, @RestPath String number) {
        var by = visit.in(population);
        return pages.show(page(by, number, Typed.nothing().with("seenOn", visit.getToday())));
    }

    @POST
    @Path("animals/{number}/disputes")
    public Response report(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> address(disputes.report(by, number, forms.read(typed, NewDispute.class))
                        .id()),
                again -> page(by, number, again));
    }

    private TemplateInstance page(Standing by, String number, Typed typed) {
        return Templates.report(
                Animals.number(number).toString(), disputes.about(by, number), keepers.collections(by), typed);
    }
}
