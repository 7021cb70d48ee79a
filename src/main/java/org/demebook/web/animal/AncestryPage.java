package org.demebook.web.animal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.demebook.ancestry.Ancestries;
import org.demebook.chart.Drawing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.registry.Localities;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Where an animal comes from: as a chart, in words, and in figures. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class AncestryPage {
    private static final List<Integer> DEPTHS = List.of(2, 3, 4, 5, 6);
    private static final int USUAL_DEPTH = 4;

    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance ancestry(
                AnimalView animal, String name, Descent descent, Drawing drawing, Depth depth);
    }

    /**
     * @param notShown of how many animals of the chart the parents are not shown
     * @param empty there is nobody in the chart but the animal itself
     */
    public record Depth(int generations, List<Integer> choices, int notShown, boolean empty) {}

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Animals animals;

    @Inject
    Ancestries ancestries;

    @Inject
    Localities localities;

    @Inject
    AncestryCharts charts;

    @GET
    @Path("{number}/ancestry")
    public Response ancestry(
            @RestPath String population, @RestPath String number, @RestQuery @Nullable String generations) {
        var by = visit.in(population);
        var animal = animals.get(by, number);
        int deep = DEPTHS.stream()
                .filter(depth -> depth.toString().equals(generations))
                .findFirst()
                .orElse(USUAL_DEPTH);
        var charted = ancestries.charted(by, animal.number(), deep);
        var ancestry = charted.ancestry();
        var depth = new Depth(
                deep,
                DEPTHS,
                charted.parentsNotShown().size(),
                ancestry.ancestors().isEmpty() && charted.parentsNotShown().isEmpty());
        return pages.show(Templates.ancestry(
                animal,
                Listed.name(animal),
                Descent.of(charted, localities.of(by, animal.number())),
                charts.of(charted),
                depth));
    }
}
