package org.demebook.web.breeding;

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
import java.util.UUID;
import org.demebook.incubation.IncubationView;
import org.demebook.incubation.Incubations;
import org.demebook.incubation.NewIncubation;
import org.demebook.incubation.NewIncubation.NewReading;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** A clutch in an incubator, and what its thermometer shows. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class IncubationPage {
    private static final List<Option> SCALES = List.of(new Option("c", "°C"), new Option("f", "°F"));

    @CheckedTemplate(basePath = "breeding", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance newIncubation(String number, List<Option> scales, Typed typed);

        static native TemplateInstance incubation(IncubationView incubation, List<Option> scales, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Incubations incubations;

    @GET
    @Path("animals/{number}/incubations/new")
    public Response blank(@RestPath String population, @RestPath String number) {
        visit.in(population);
        var typed = Typed.nothing().with("startedOn", visit.getToday()).with("setPoint.unit", "c");
        return pages.show(Templates.newIncubation(number, SCALES, typed));
    }

    @POST
    @Path("animals/{number}/incubations")
    public Response start(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> address(incubations
                        .start(by, number, forms.read(Typed.of(form), NewIncubation.class))
                        .id()),
                typed -> Templates.newIncubation(number, SCALES, typed));
    }

    @GET
    @Path("incubations/{id}")
    public Response incubation(@RestPath String population, @RestPath UUID id) {
        var view = incubations.get(visit.in(population), id);
        return pages.show(Templates.incubation(view, SCALES, Typed.nothing().with("temperature.unit", "c")));
    }

    @POST
    @Path("incubations/{id}/readings")
    public Response read(@RestPath String population, @RestPath UUID id, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    incubations.read(by, id, forms.read(Typed.of(form), NewReading.class));
                    return address(id);
                },
                typed -> Templates.incubation(incubations.get(by, id), SCALES, typed));
    }

    private String address(UUID id) {
        return visit.getBase() + "/incubations/" + id;
    }
}
