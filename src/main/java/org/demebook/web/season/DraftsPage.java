package org.demebook.web.season;

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
import java.util.Objects;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.programme.DraftView;
import org.demebook.programme.Drafts;
import org.demebook.programme.NewDraft;
import org.demebook.programme.PlanHeadingView;
import org.demebook.programme.SeasonPlans;
import org.demebook.registry.Populations;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.demebook.web.pairing.Fractions;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Drafts of a season's plan: asked for, watched while they are computed, held against each other, issued. */
@Path("/populations/{population}/season-drafts")
@Produces(Pages.HTML)
class DraftsPage {
    private static final int DAYS_BEFORE_A_JOURNEY = 30;
    private static final List<String> LIMITS = List.of("0", "0.03125", "0.0625", "0.125", "0.25");
    private static final String USUAL_LIMIT = "0.125";

    @CheckedTemplate(basePath = "season", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance drafts(List<DraftView> drafts);

        static native TemplateInstance newDraft(
                @Nullable PlanHeadingView inForce, List<Option> limits, List<Option> weights, Typed typed);

        static native TemplateInstance draft(
                DraftView draft,
                @Nullable PlanShown plan,
                @Nullable Beside beside,
                List<DraftView> others,
                @Nullable PlanHeadingView inForce,
                Typed typed);

        static native TemplateInstance progress(DraftView draft);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Drafts drafts;

    @Inject
    SeasonPlans plans;

    @Inject
    Populations populations;

    @Inject
    Curves curves;

    @GET
    public Response all(@RestPath String population) {
        return pages.show(Templates.drafts(drafts.all(visit.in(population))));
    }

    @GET
    @Path("new")
    public Response ask(
            @RestPath String population,
            @QueryParam("from") @Nullable UUID from,
            @QueryParam("together") @Nullable String together,
            @QueryParam("apart") @Nullable String apart) {
        var by = visit.in(population);
        Drafts.requireCoordinator(by);
        var typed = from == null ? usual(by) : DraftForm.of(drafts.asked(by, from));
        DraftForm.and(typed, DraftForm.TOGETHER, together);
        DraftForm.and(typed, DraftForm.APART, apart);
        return pages.show(form(by, typed));
    }

    /** Far enough ahead for an animal to travel, and on with the answers to a plan whose day is yet to come. */
    private Typed usual(Standing by) {
        var today = visit.getToday();
        var inForce = plans.headingInForce(by)
                .filter(plan -> plan.pairOn().isAfter(today))
                .orElse(null);
        int quarantine = populations.get(by).profile().daysOfQuarantine();
        return Typed.nothing()
                .with("pairOn", inForce == null ? today.plusDays(quarantine + DAYS_BEFORE_A_JOURNEY) : inForce.pairOn())
                .with("follows", inForce == null ? null : inForce.id())
                .with("maximumInbreeding", USUAL_LIMIT);
    }

    private TemplateInstance form(Standing by, Typed typed) {
        var words = pages.words(SeasonMessages.class);
        return Templates.newDraft(
                plans.headingInForce(by).orElse(null),
                LIMITS.stream().map(this::limit).toList(),
                List.of(new Option("", words.lookAheadYes()), new Option("false", words.lookAheadNo())),
                typed);
    }

    private Option limit(String limit) {
        return new Option(limit, Objects.requireNonNullElse(Fractions.of(Double.valueOf(limit)), limit));
    }

    @POST
    public Response start(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> address(drafts.start(by, forms.read(DraftForm.body(typed, form), NewDraft.class))
                        .id()),
                refused -> form(by, refused));
    }

    /** While it is computed a fragment tells how far it is; then the page is loaded anew. */
    @GET
    @Path("{draft}")
    public Response draft(
            @RestPath String population, @RestPath UUID draft, @QueryParam("beside") @Nullable UUID beside) {
        var by = visit.in(population);
        var view = drafts.get(by, draft);
        if (visit.isFragment()) {
            return view.state().isOver()
                    ? Response.noContent().header("HX-Refresh", "true").build()
                    : pages.show(Templates.progress(view));
        }
        return pages.show(page(by, view, beside, Typed.nothing()));
    }

    @POST
    @Path("{draft}/stop")
    public Response stop(@RestPath String population, @RestPath UUID draft) {
        return pages.goTo(address(drafts.stop(visit.in(population), draft).id()));
    }

    private TemplateInstance page(Standing by, DraftView draft, @Nullable UUID other, Typed typed) {
        var inForce = plans.headingInForce(by).orElse(null);
        var plan = draft.plan() == null ? null : curves.plan(draft.plan());
        return Templates.draft(
                draft,
                plan,
                plan == null ? null : beside(by, draft, plan, inForce, other),
                drafts.all(by).stream()
                        .filter(one -> one.plan() != null && !one.id().equals(draft.id()))
                        .toList(),
                inForce,
                typed);
    }

    private @Nullable Beside beside(
            Standing by, DraftView draft, PlanShown plan, @Nullable PlanHeadingView inForce, @Nullable UUID other) {
        var words = pages.words(SeasonMessages.class);
        var columns = new ArrayList<Beside.Column>();
        columns.add(new Beside.Column(words.thisDraft(), null, plan));
        if (inForce != null) {
            columns.add(new Beside.Column(
                    words.planInForce(), visit.getBase() + "/season", curves.plan(plans.get(by, inForce.id()))));
        }
        if (other != null && !other.equals(draft.id())) {
            var view = drafts.get(by, other);
            if (view.plan() != null) {
                columns.add(new Beside.Column(words.otherDraft(), address(other), curves.plan(view.plan())));
            }
        }
        return columns.size() < 2 ? null : Beside.of(columns);
    }

    private String address(UUID draft) {
        return visit.getBase() + "/season-drafts/" + draft;
    }
}
