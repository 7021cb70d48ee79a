package org.demebook.web.counts;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.demebook.census.CountPreparation;
import org.demebook.census.CountPreparations;
import org.demebook.census.NewCountRelease;
import org.demebook.keeper.Keepers;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.web.Forms;
import org.demebook.web.FrameMessages;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** A coordinator counts, sees how that goes, and what came of it. */
@Path("/populations/{population}/count-releases")
@Produces(Pages.HTML)
class CountReleasePage {
    private static final String UNDERSTOOD = "understood";

    @CheckedTemplate(basePath = "counts", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance newRelease(List<Option> understood, Typed typed);

        static native TemplateInstance preparation(CountPreparation preparation, long seconds);

        static native TemplateInstance progress(CountPreparation preparation, long seconds);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    CountPreparations preparations;

    @Inject
    Clock clock;

    @GET
    @Path("new")
    public Response newRelease(@RestPath String population) {
        Keepers.requireCoordinator(visit.in(population));
        return pages.show(form(Typed.nothing().with("countedOn", visit.getToday())));
    }

    @POST
    public Response release(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    var asked = asked(Typed.of(form));
                    return "%s/count-releases/preparations/%s"
                            .formatted(
                                    visit.getBase(),
                                    preparations.start(by, asked).id());
                },
                this::form);
    }

    @GET
    @Path("preparations/{id}")
    public Response preparation(@RestPath String population, @RestPath UUID id) {
        var preparation = preparations.get(visit.in(population), id);
        long seconds =
                Duration.between(preparation.startedAt(), clock.instant()).toSeconds();
        return pages.show(
                visit.isFragment()
                        ? Templates.progress(preparation, seconds)
                        : Templates.preparation(preparation, seconds));
    }

    /** What is asked for; refuses with all that is wrong at once. */
    private NewCountRelease asked(Typed typed) {
        var findings = new ArrayList<Finding>();
        var asked = new NewCountRelease(null);
        try {
            asked = forms.read(typed, NewCountRelease.class, UNDERSTOOD);
        } catch (Refusal unreadable) {
            findings.addAll(unreadable.findings());
        }
        if (typed.text(UNDERSTOOD) == null) {
            findings.add(Finding.error(
                    UNDERSTOOD, null, pages.words(CountsMessages.class).notUnderstood()));
        }
        if (!findings.isEmpty()) {
            throw new Refusal(
                    ProblemType.INVALID_VALUES, pages.words(FrameMessages.class).lookAtFields(), findings);
        }
        return asked;
    }

    private TemplateInstance form(Typed typed) {
        return Templates.newRelease(
                List.of(new Option("yes", pages.words(CountsMessages.class).understand())), typed);
    }
}
