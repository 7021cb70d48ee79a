package org.demebook.web.counts;

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
import org.demebook.census.CountWaiverView;
import org.demebook.census.NewCountRules;
import org.demebook.census.Protection;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** How published counts are protected: the association's numbers, and each keeper's own choice. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class ProtectionPage {
    private static final String REVISION = "revision";

    @CheckedTemplate(basePath = "counts", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance rules(Typed typed, boolean kept);

        static native TemplateInstance waiver(List<Option> choices, Typed typed, boolean kept);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Protection protection;

    @GET
    @Path("count-rules")
    public Response rules(@RestPath String population, @QueryParam("kept") @Nullable String kept) {
        var rules = protection.rules(visit.in(population));
        return pages.show(Templates.rules(
                Typed.nothing()
                        .with("fewestKeepers", rules.fewestKeepers())
                        .with("percent", rules.percent())
                        .with(REVISION, rules.revision()),
                kept != null));
    }

    @POST
    @Path("count-rules")
    public Response setRules(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var rules = forms.read(typed, NewCountRules.class, REVISION);
                    protection.set(by, typed.ifMatch(), rules);
                    return pages.goTo(visit.getBase() + "/count-rules?kept=yes");
                },
                refused -> Templates.rules(refused, false));
    }

    @GET
    @Path("count-waiver")
    public Response waiver(@RestPath String population, @QueryParam("kept") @Nullable String kept) {
        var waiver = protection.waiver(visit.in(population));
        return pages.show(Templates.waiver(choices(), Typed.nothing().with("waived", waiver.waived()), kept != null));
    }

    @POST
    @Path("count-waiver")
    public Response waive(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    protection.waive(
                            by, forms.read(typed, CountWaiverView.class).waived());
                    return pages.goTo(visit.getBase() + "/count-waiver?kept=yes");
                },
                refused -> Templates.waiver(choices(), refused, false));
    }

    private List<Option> choices() {
        var words = pages.words(CountsMessages.class);
        return List.of(new Option("false", words.isProtected()), new Option("true", words.mayBeTold()));
    }
}
