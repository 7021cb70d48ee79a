package org.demebook.web.today;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.demebook.care.CareTaskView;
import org.demebook.care.CareTasks;
import org.demebook.care.SilenceScope;
import org.demebook.care.TaskState;
import org.demebook.keeper.Standing;
import org.demebook.rest.Page;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** One care task, with all that can be done about it; and the lists of those that are done or silent. */
@Path("/populations/{population}/care-tasks")
@Produces(Pages.HTML)
class CareTaskPage {
    private static final int DAYS_AHEAD = 365;

    @CheckedTemplate(basePath = "today", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance task(TaskRow row, Typed typed);

        static native TemplateInstance done(Page<CareTaskView> page);

        static native TemplateInstance silenced(Page<CareTaskView> page);
    }

    /** @param on the day on which it was done; today when nothing is said */
    record Completed(@Nullable LocalDate on) {}

    record Postponed(@NotNull LocalDate to) {}

    record Silenced(@NotNull SilenceScope scope) {}

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    CareTasks tasks;

    @GET
    public Response list(
            @RestPath String population, @RestQuery @Nullable String state, @RestQuery @Nullable String after) {
        var by = visit.in(population);
        if ("done".equals(state)) {
            return pages.show(Templates.done(tasks.page(by, TaskState.DONE, null, Page.after(after), Page.USUAL)));
        }
        if ("silenced".equals(state)) {
            return pages.show(Templates.silenced(tasks.page(
                    by, TaskState.SILENCED, visit.getToday().plusDays(DAYS_AHEAD), Page.after(after), Page.USUAL)));
        }
        return pages.goTo(today());
    }

    @GET
    @Path("{key}")
    public Response task(@RestPath String population, @RestPath String key) {
        return pages.show(page(visit.in(population), key, Typed.nothing().with("on", visit.getToday())));
    }

    @POST
    @Path("{key}/completion")
    public Response complete(@RestPath String population, @RestPath String key, MultivaluedMap<String, String> form) {
        var typed = Typed.of(form);
        return change(
                population,
                key,
                typed,
                by -> tasks.complete(
                        by, List.of(key), forms.read(typed, Completed.class).on()));
    }

    @POST
    @Path("{key}/postponement")
    public Response postpone(@RestPath String population, @RestPath String key, MultivaluedMap<String, String> form) {
        var typed = Typed.of(form);
        return change(
                population,
                key,
                typed,
                by -> tasks.postpone(by, key, forms.read(typed, Postponed.class).to()));
    }

    @POST
    @Path("{key}/silence")
    public Response silence(@RestPath String population, @RestPath String key, MultivaluedMap<String, String> form) {
        var typed = Typed.of(form);
        return change(
                population,
                key,
                typed,
                by -> tasks.silence(by, key, forms.read(typed, Silenced.class).scope()));
    }

    private Response change(String population, String key, Typed typed, Consumer<Standing> work) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    work.accept(by);
                    return today() + "?changed=" + key;
                },
                refused -> page(by, key, refused));
    }

    /** Many at once: those that are still open. */
    @POST
    @Path("completions")
    public Response completeAll(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var keys = stillOpen(by, typed.values("keys[]"));
                    tasks.complete(by, keys, null);
                    return today()
                            + (keys.isEmpty() || keys.size() > Change.MOST
                                    ? ""
                                    : keys.stream()
                                            .map(key -> "changed=" + key)
                                            .collect(Collectors.joining("&", "?", "")));
                },
                refused -> done(by));
    }

    private List<String> stillOpen(Standing by, List<String> keys) {
        var today = visit.getToday();
        var open = tasks.open(by, LocalDate.EPOCH, today.plusDays(CareTasks.MOST_DAYS_AHEAD)).stream()
                .map(CareTaskView::key)
                .collect(Collectors.toSet());
        return keys.stream().filter(open::contains).toList();
    }

    /** Takes back that something was done, or silenced, or moved. */
    @POST
    @Path("restorations")
    public Response restore(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var keys = typed.values("keys[]");
                    tasks.restoreAll(by, keys);
                    return today() + (keys.size() == 1 ? "?task=" + keys.get(0) : "");
                },
                refused -> done(by));
    }

    private TemplateInstance done(Standing by) {
        return Templates.done(tasks.page(by, TaskState.DONE, null, null, Page.USUAL));
    }

    private TemplateInstance page(Standing by, String key, Typed typed) {
        var row = new TaskRow(tasks.get(by, key), visit.getBase(), visit.getToday());
        return Templates.task(row, typed);
    }

    private String today() {
        return visit.getBase() + "/today";
    }
}
