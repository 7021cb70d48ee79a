package org.demebook.web.season;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.demebook.programme.AnswersHeard;
import org.demebook.programme.AnswersView;
import org.demebook.programme.OutcomeView;
import org.demebook.programme.Outcomes;
import org.demebook.programme.PlanHeadingView;
import org.demebook.programme.RecomputationView;
import org.demebook.programme.SeasonPlans;
import org.demebook.rest.Page;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Plans that were issued: all of them, what was answered to one, what came of it, and whether it comes out the same again. */
@Path("/populations/{population}/season-plans")
@Produces(Pages.HTML)
class PlansPage {
    private static final int A_PAGE = 50;

    /** A draft that is to be issued. */
    record Issued(@NotNull UUID draft) {}

    @CheckedTemplate(basePath = "season", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance plans(List<PlanHeadingView> plans, @Nullable String next, Typed typed);

        static native TemplateInstance answers(PlanHeadingView heading, AnswersView answers);

        static native TemplateInstance outcome(PlanHeadingView heading, OutcomeView outcome);

        static native TemplateInstance recomputation(PlanHeadingView heading, RecomputationView recomputation);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    SeasonPlans plans;

    @Inject
    AnswersHeard heard;

    @Inject
    Outcomes outcomes;

    @GET
    public Response all(@RestPath String population, @QueryParam("after") @Nullable String after) {
        var page = plans.page(visit.in(population), Page.after(after), A_PAGE);
        return pages.show(Templates.plans(page.items(), page.next(), Typed.nothing()));
    }

    @POST
    public Response issue(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    plans.issue(by, forms.read(Typed.of(form), Issued.class).draft());
                    return visit.getBase() + "/season";
                },
                refused -> {
                    var page = plans.page(by, null, A_PAGE);
                    return Templates.plans(page.items(), page.next(), refused);
                });
    }

    @GET
    @Path("{plan}/answers")
    public Response answers(@RestPath String population, @RestPath UUID plan) {
        var by = visit.in(population);
        return pages.show(Templates.answers(plans.heading(by, plan), heard.of(by, plan)));
    }

    @GET
    @Path("{plan}/outcome")
    public Response outcome(@RestPath String population, @RestPath UUID plan) {
        var by = visit.in(population);
        return pages.show(Templates.outcome(plans.heading(by, plan), outcomes.of(by, plan)));
    }

    @GET
    @Path("{plan}/recomputation")
    public Response recomputation(@RestPath String population, @RestPath UUID plan) {
        var by = visit.in(population);
        return pages.show(Templates.recomputation(plans.heading(by, plan), plans.recompute(by, plan)));
    }
}
