package org.demebook.web.today;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Optional;
import org.demebook.care.CareTaskView;
import org.demebook.care.CareTasks;
import org.demebook.keeper.Standing;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.rest.Page;
import org.demebook.transfer.DisputeState;
import org.demebook.transfer.DisputeView;
import org.demebook.transfer.Disputes;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.demebook.web.rearing.Rack;
import org.demebook.web.rearing.Written;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Today: what is due, late, expected, or waiting; one tap does the usual thing, and another takes it back. */
@Path("/populations/{population}/today")
@Produces(Pages.HTML)
class TodayPage {
    private static final int DAYS_BACK = 3650;

    @CheckedTemplate(basePath = "today", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance today(
                Agenda agenda, List<DisputeView> disputes, @Nullable Change change, @Nullable Written written);

        static native TemplateInstance row(TaskRow row);

        static native TemplateInstance changed(Change change);

        static native TemplateInstance written(Written written);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    CareTasks tasks;

    @Inject
    Disputes disputes;

    @Inject
    Rack rack;

    /**
     * @param task the one that a part of the page is wanted of
     * @param changed keys of tasks that were done, moved or silenced just now
     * @param written entries of the journal that wrote something down just now
     */
    @GET
    public Response today(
            @RestPath String population,
            @RestQuery @Nullable String task,
            @RestQuery List<String> changed,
            @RestQuery @Nullable String written) {
        var by = visit.in(population);
        var here = visit.getBase() + "/today";
        if (visit.isFragment()) {
            return part(by, task, changed, written);
        }
        return pages.show(Templates.today(
                agenda(by),
                waiting(by),
                change(by, changed),
                rack.written(by, written, here).orElse(null)));
    }

    private Agenda agenda(Standing by) {
        var today = visit.getToday();
        var open = tasks.open(by, today.minusDays(DAYS_BACK), today.plusDays(Agenda.DAYS_TO_A_BIRTH));
        return Agenda.of(open, visit.getBase(), today);
    }

    /** The disputes that somebody else began, over an animal of the keeper's, or that a coordinator may settle. */
    private List<DisputeView> waiting(Standing by) {
        return disputes.page(by, DisputeState.OPEN, null, Page.USUAL).items().stream()
                .filter(dispute -> !dispute.reportedByYou())
                .toList();
    }

    /** In place of the line that was tapped: what came of it. */
    private Response part(Standing by, @Nullable String task, List<String> changed, @Nullable String written) {
        var wrote = rack.written(by, written, visit.getBase() + "/today" + (task == null ? "" : "?task=" + task));
        if (wrote.isPresent()) {
            return pages.show(Templates.written(wrote.get()));
        }
        var change = change(by, changed);
        if (change != null) {
            return pages.show(Templates.changed(change));
        }
        var open = task == null ? Optional.<CareTaskView>empty() : find(by, task);
        return open.filter(view -> view.doneOn() == null && view.silenced() == null)
                .map(view -> pages.show(Templates.row(new TaskRow(view, visit.getBase(), visit.getToday()))))
                .orElseGet(
                        () -> Response.noContent().header("HX-Refresh", "true").build());
    }

    private @Nullable Change change(Standing by, List<String> changed) {
        return changed.isEmpty()
                ? null
                : find(by, changed.get(0))
                        .map(first -> new Change(first, changed))
                        .orElse(null);
    }

    private Optional<CareTaskView> find(Standing by, String key) {
        try {
            return Optional.of(tasks.get(by, key));
        } catch (Refusal refusal) {
            if (refusal.type() == ProblemType.NO_SUCH_CARE_TASK) {
                return Optional.empty(); // it vanished with what it came from
            }
            throw refusal;
        }
    }
}
