package org.demebook.web.litter;

import static org.demebook.problem.ProblemType.IDEMPOTENCY_KEY_REUSED;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.litter.Litters;
import org.demebook.litter.NewLitter;
import org.demebook.problem.Refusal;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Where a litter is entered, at the rack. */
@Path("/populations/{population}/litters")
@Produces(Pages.HTML)
class LitterEntryPage {
    private static final List<String> COUNTS =
            List.of("liveBorn", "malformedLive", "stillborn", "malformedStillborn", "partDeveloped", "unfertilised");

    @CheckedTemplate(basePath = "litter", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance entry(Entry entry, boolean sentBefore, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Litters litters;

    @Inject
    BirthMasses masses;

    @Inject
    Entries entries;

    @GET
    @Path("new")
    public Response blank(@RestPath String population, @RestQuery @Nullable String dam) {
        var by = visit.in(population);
        var typed = Typed.nothing().with("born", visit.getToday()).with("sire.kind", "worked-out");
        COUNTS.forEach(count -> typed.with(count, 0));
        return pages.show(page(by, typed.with("dam", dam)));
    }

    /** @param keeper whose draft it is, where a device sends what it kept */
    @POST
    public Response register(
            @RestPath String population, @RestQuery @Nullable UUID keeper, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        if (keeper != null && !keeper.equals(by.keeperId())) {
            throw new Refusal(NOT_ALLOWED, "This is the draft of another keeper; only they send it.");
        }
        return forms.once(by.keeperId(), Typed.of(form), () -> registered(by, form), typed -> page(by, typed));
    }

    private String registered(Standing by, MultivaluedMap<String, String> form) {
        var typed = Typed.of(body(form));
        var litter = forms.read(typed, NewLitter.class, "otherDam", "roughBorn", BirthMasses.FIELD, BirthMasses.UNIT);
        var weighed = masses.read(typed, visit.getPreferences().mass());
        var registered = litters.register(by, litter);
        masses.record(by, registered, weighed, visit.getToday());
        return visit.getBase() + "/litters/" + registered.litter().id();
    }

    /** The form as the body of the API: one dam, one day, and a named sire only where he is said to be known. */
    private static MultivaluedMap<String, String> body(MultivaluedMap<String, String> form) {
        var body = new MultivaluedHashMap<String, String>();
        body.putAll(form);
        if (Entries.OTHER.equals(form.getFirst("dam"))) {
            instead(body, "dam", form.getFirst("otherDam"));
        }
        var rough = form.getFirst("roughBorn");
        if (rough != null && !rough.isBlank()) {
            instead(body, "born", rough);
        }
        if (!"known".equals(form.getFirst("sire.kind"))) {
            body.remove("sire.animal");
        }
        if (!"worked-out".equals(form.getFirst("sire.kind"))) {
            body.remove("sire.wholeLitter");
        }
        return body;
    }

    private static void instead(MultivaluedMap<String, String> body, String field, @Nullable String value) {
        body.remove(field);
        if (value != null) {
            body.add(field, value);
        }
    }

    private TemplateInstance page(Standing by, Typed typed) {
        var problem = typed.getProblem();
        boolean sentBefore = problem != null && problem.type().equals(IDEMPOTENCY_KEY_REUSED.uri());
        return Templates.entry(entries.of(by, typed, visit.getToday()), sentBefore, typed);
    }
}
