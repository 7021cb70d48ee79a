package org.demebook.web.rearing;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import org.demebook.diary.CareRecords;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.demebook.web.rearing.Written.Entries;
import org.jboss.resteasy.reactive.RestPath;

/** One tap, and the taking back of what it wrote. */
@Path("/populations/{population}/care-records")
@Produces(Pages.HTML)
class TapPage {
    @CheckedTemplate(basePath = "rearing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance refused(Typed typed, String back);

        static native TemplateInstance refusedRow(Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Rack rack;

    @Inject
    CareRecords careRecords;

    @POST
    @Path("taps")
    public Response tap(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> rack.tapped(
                        by, Tap.of(typed.text("tap")), typed.values("animal[]"), rack.back(typed.text("back"))),
                this::refused);
    }

    @POST
    @Path("withdrawal")
    public Response takeBack(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var entries = Entries.parse(typed.text(Rack.WRITTEN));
                    if (entries == null) {
                        throw new Refusal(ProblemType.BAD_PARAMETER, "A form of this server says what to take back.");
                    }
                    careRecords.withdrawWritten(by, entries.from(), entries.until());
                    return rack.back(typed.text("back"));
                },
                this::refused);
    }

    private TemplateInstance refused(Typed typed) {
        return visit.isFragment()
                ? Templates.refusedRow(typed)
                : Templates.refused(typed, rack.back(typed.text("back")));
    }
}
