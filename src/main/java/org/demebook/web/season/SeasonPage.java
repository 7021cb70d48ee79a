package org.demebook.web.season;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.programme.AnswerReason;
import org.demebook.programme.Answers;
import org.demebook.programme.AnswersHeard;
import org.demebook.programme.AnswersView;
import org.demebook.programme.NewAnswer;
import org.demebook.programme.PlanHeadingView;
import org.demebook.programme.Recommendations;
import org.demebook.programme.SeasonPlans;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** A season's plan: what it asks of one's own animals, with answers in one tap; for coordinators all of it. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class SeasonPage {
    @CheckedTemplate(basePath = "season", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance noPlan();

        static native TemplateInstance season(
                PlanHeadingView heading,
                Recommended recommended,
                List<Reasons> reasons,
                @Nullable PlanShown plan,
                @Nullable AnswersView answers,
                Typed typed,
                String refused);
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
    Recommendations recommendations;

    @Inject
    Answers answers;

    @Inject
    AnswersHeard heard;

    @Inject
    Curves curves;

    @GET
    @Path("season")
    public Response season(@RestPath String population) {
        var by = visit.in(population);
        return pages.show(plans.headingInForce(by)
                .map(heading -> page(by, heading, Typed.nothing(), null))
                .orElseGet(Templates::noPlan));
    }

    @GET
    @Path("season-plans/{plan}")
    public Response plan(@RestPath String population, @RestPath UUID plan) {
        var by = visit.in(population);
        return pages.show(page(by, plans.heading(by, plan), Typed.nothing(), null));
    }

    @POST
    @Path("season-plans/{plan}/litters/{litter}/answer")
    public Response answer(
            @RestPath String population,
            @RestPath UUID plan,
            @RestPath UUID litter,
            MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.attempt(
                Typed.of(form),
                () -> {
                    answers.give(by, plan, litter, forms.read(named(Typed.of(form)), NewAnswer.class));
                    return pages.goTo(visit.getBase() + "/season#recommendations");
                },
                refused -> page(by, plans.heading(by, plan), refused, litter));
    }

    /** A reason names its answer. */
    private static Typed named(Typed typed) {
        return typed.text("answer") != null
                ? typed
                : Arrays.stream(AnswerReason.values())
                        .filter(reason -> reason.word().equals(typed.text("reason")))
                        .findFirst()
                        .map(reason -> typed.with("answer", reason.answer().word()))
                        .orElse(typed);
    }

    private TemplateInstance page(Standing by, PlanHeadingView heading, Typed typed, @Nullable UUID refused) {
        return Templates.season(
                heading,
                Recommended.of(heading, recommendations.of(by, heading.id())),
                Reasons.all(),
                by.isCoordinator() ? curves.plan(plans.get(by, heading.id())) : null,
                by.isCoordinator() ? heard.of(by, heading.id()) : null,
                typed,
                written(refused));
    }

    private static String written(@Nullable UUID litter) {
        return litter == null ? "" : litter.toString();
    }
}
