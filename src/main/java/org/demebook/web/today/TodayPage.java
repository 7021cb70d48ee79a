package org.demebook.web.today;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.util.List;
import org.demebook.care.CareTaskView;
import org.demebook.care.CareTasks;
import org.demebook.keeper.Standing;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** Today: one tap says that something was done. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class TodayPage {
    private static final int DAYS_AHEAD = 14;
    private static final int DAYS_BACK = 365;

    @CheckedTemplate(basePath = "today", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance today(List<CareTaskView> tasks, LocalDate until, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    CareTasks tasks;

    @GET
    @Path("today")
    public Response today(@RestPath String population) {
        return pages.show(page(visit.in(population), Typed.nothing()));
    }

    @POST
    @Path("care-tasks/{key}/completion")
    public Response complete(@RestPath String population, @RestPath String key, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    tasks.complete(by, List.of(key), null);
                    return visit.getBase() + "/today";
                },
                typed -> page(by, typed));
    }

    private TemplateInstance page(Standing by, Typed typed) {
        var today = visit.getToday();
        var until = today.plusDays(DAYS_AHEAD);
        return Templates.today(tasks.open(by, today.minusDays(DAYS_BACK), until), until, typed);
    }
}
