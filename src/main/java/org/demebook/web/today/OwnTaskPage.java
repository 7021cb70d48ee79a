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
import java.util.List;
import java.util.stream.Stream;
import org.demebook.care.CareTasks;
import org.demebook.care.NewCareTask;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** A task of the keeper's own, once or again and again. */
@Path("/populations/{population}/care-tasks")
@Produces(Pages.HTML)
class OwnTaskPage {
    @CheckedTemplate(basePath = "today", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance own(List<Option> collections, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    CareTasks tasks;

    @Inject
    Keepers keepers;

    @GET
    @Path("new")
    public Response blank(@RestPath String population, @RestQuery @Nullable String animal) {
        var by = visit.in(population);
        return pages.show(page(by, Typed.nothing().with("animal", animal).with("dueOn", visit.getToday())));
    }

    @POST
    public Response add(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    tasks.add(by, forms.read(typed, NewCareTask.class));
                    return visit.getBase() + "/today";
                },
                refused -> page(by, refused));
    }

    private TemplateInstance page(Standing by, Typed typed) {
        var collections = Stream.concat(
                        Stream.of(Option.none(pages.words(TodayMessages.class).chooseNone())),
                        keepers.collections(by).stream()
                                .map(collection -> new Option(collection.id().toString(), collection.label())))
                .toList();
        return Templates.own(collections, typed);
    }
}
