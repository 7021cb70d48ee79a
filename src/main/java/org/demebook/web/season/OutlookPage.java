package org.demebook.web.season;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.UUID;
import java.util.function.Function;
import org.demebook.plot.Trend;
import org.demebook.programme.Drafts;
import org.demebook.programme.OutlookQuestion;
import org.demebook.programme.OutlookView;
import org.demebook.programme.Outlooks;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The years to come, if a plan or a draft is followed: reckoned when somebody asks, since it takes a while. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class OutlookPage {
    @CheckedTemplate(basePath = "season", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance outlook(
                String back, boolean ofDraft, @Nullable OutlookView outlook, @Nullable Trend ahead, Typed typed);
    }

    /** As the API takes it. */
    record Asked(
            @Nullable @Min(1) @Max(30) Integer seasons,
            @Nullable @DecimalMin("0.25") @DecimalMax("5") Double yearsBetween,
            @Nullable @DecimalMin("0.01") @DecimalMax("1") Double target,
            @Nullable @DecimalMin("1") @DecimalMax("100") Double breedsUntilAge,
            @Nullable @Min(0) @Max(5000) Integer litters,
            @Nullable @Min(1) @Max(5000) Integer places,
            @Nullable @Min(1) @Max(20) Integer founders) {
        OutlookQuestion question() {
            return OutlookQuestion.of(seasons, yearsBetween, target, breedsUntilAge, litters, places, founders);
        }
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
    Outlooks outlooks;

    @Inject
    Curves curves;

    @GET
    @Path("season-plans/{plan}/outlook")
    public Response ofPlan(@RestPath String population, @RestPath UUID plan, @Context UriInfo uri) {
        var by = visit.in(population);
        Drafts.requireCoordinator(by);
        return answer("/season-plans/" + plan, false, uri, question -> outlooks.ofPlan(by, plan, question));
    }

    @GET
    @Path("season-drafts/{draft}/outlook")
    public Response ofDraft(@RestPath String population, @RestPath UUID draft, @Context UriInfo uri) {
        var by = visit.in(population);
        drafts.get(by, draft);
        return answer("/season-drafts/" + draft, true, uri, question -> outlooks.ofDraft(by, draft, question));
    }

    private Response answer(String back, boolean ofDraft, UriInfo uri, Function<OutlookQuestion, OutlookView> outlook) {
        var standing = visit.getBase() + back;
        if (uri.getQueryParameters().isEmpty()) {
            return pages.show(Templates.outlook(
                    standing,
                    ofDraft,
                    null,
                    null,
                    Typed.nothing().with("seasons", 10).with("yearsBetween", 1).with("founders", 1)));
        }
        var typed = Typed.of(new MultivaluedHashMap<>(uri.getQueryParameters()));
        return forms.look(
                typed,
                () -> {
                    var view = outlook.apply(forms.read(typed, Asked.class).question());
                    return Templates.outlook(standing, ofDraft, view, curves.ahead(view), typed);
                },
                refused -> Templates.outlook(standing, ofDraft, null, null, refused));
    }
}
