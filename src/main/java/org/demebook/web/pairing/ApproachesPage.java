package org.demebook.web.pairing;

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
import java.util.function.BiFunction;
import org.demebook.approach.ApproachSide;
import org.demebook.approach.ApproachState;
import org.demebook.approach.ApproachView;
import org.demebook.approach.Approaches;
import org.demebook.approach.NewApproach;
import org.demebook.keeper.Standing;
import org.demebook.planning.UnnamedPartners;
import org.demebook.problem.Refusal;
import org.demebook.rest.Page;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Requests between keepers who do not know of each other: made, answered, taken back. */
@Path("/populations/{population}/approaches")
@Produces(Pages.HTML)
class ApproachesPage {
    private static final int A_PAGE = 50;

    @CheckedTemplate(basePath = "pairing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance approaches(
                List<ApproachView> waiting, List<ApproachView> others, @Nullable String next);

        static native TemplateInstance approach(ApproachView approach, @Nullable String fraction, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Approaches approaches;

    @Inject
    UnnamedPartners partners;

    @GET
    public Response list(@RestPath String population, @QueryParam("after") @Nullable String after) {
        var page = approaches.page(visit.in(population), null, Page.after(after), A_PAGE);
        return pages.show(Templates.approaches(
                page.items().stream().filter(ApproachesPage::waits).toList(),
                page.items().stream().filter(approach -> !waits(approach)).toList(),
                page.next()));
    }

    private static boolean waits(ApproachView approach) {
        return approach.side() == ApproachSide.ASKED && approach.state() == ApproachState.OPEN;
    }

    @POST
    public Response propose(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> address(approaches
                        .propose(by, forms.read(Typed.of(form), NewApproach.class))
                        .id()),
                refused -> again(by, refused));
    }

    private TemplateInstance again(Standing by, Typed refused) {
        var animal = refused.value("animal");
        try {
            return UnnamedPartnersPage.page(partners.of(by, animal), refused);
        } catch (Refusal noneForIt) {
            return UnnamedPartnersPage.none(animal, refused);
        }
    }

    @GET
    @Path("{approach}")
    public Response approach(@RestPath String population, @RestPath UUID approach) {
        return pages.show(page(visit.in(population), approach, Typed.nothing()));
    }

    @POST
    @Path("{approach}/agreement")
    public Response agree(@RestPath String population, @RestPath UUID approach, MultivaluedMap<String, String> form) {
        return answer(population, approach, form, approaches::agree);
    }

    @POST
    @Path("{approach}/refusal")
    public Response refuse(@RestPath String population, @RestPath UUID approach, MultivaluedMap<String, String> form) {
        return answer(population, approach, form, approaches::refuse);
    }

    @POST
    @Path("{approach}/withdrawal")
    public Response withdraw(
            @RestPath String population, @RestPath UUID approach, MultivaluedMap<String, String> form) {
        return answer(population, approach, form, approaches::withdraw);
    }

    private Response answer(
            String population,
            UUID approach,
            MultivaluedMap<String, String> form,
            BiFunction<Standing, UUID, ApproachView> answer) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> address(answer.apply(by, approach).id()),
                refused -> page(by, approach, refused));
    }

    private TemplateInstance page(Standing by, UUID approach, Typed typed) {
        var view = approaches.get(by, approach);
        return Templates.approach(
                view, view.pair() == null ? null : Fractions.of(view.pair().kinship()), typed);
    }

    private String address(UUID approach) {
        return visit.getBase() + "/approaches/" + approach;
    }
}
