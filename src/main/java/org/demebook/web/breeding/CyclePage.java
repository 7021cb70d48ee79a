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
import org.demebook.breeding.BreedingSigns;
import org.demebook.breeding.NewBreedingSign;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** The breeding of one animal: her cycle, what was seen of it, when her young are due; with whom it was together. */
@Path("/populations/{population}/animals/{number}")
@Produces(Pages.HTML)
class CyclePage {
    @CheckedTemplate(basePath = "breeding", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance cycle(
                BreedingStory story, List<Option> kinds, List<Option> howKnown, List<Option> males, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    BreedingSigns signs;

    @Inject
    BreedingStories stories;

    @Inject
    BreedingChoices choices;

    @GET
    @Path("breeding")
    public Response breeding(@RestPath String population, @RestPath String number) {
        var by = visit.in(population);
        var typed = Typed.nothing().with("happenedOn", visit.getToday()).with("howKnown", "seen");
        return pages.show(page(by, number, typed));
    }

    @POST
    @Path("breeding-signs")
    public Response note(@RestPath String population, @RestPath String number, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        return forms.once(
                by.keeperId(),
                Typed.of(form),
                () -> {
                    var typed = Typed.of(SignForm.body(form, visit.zone()));
                    signs.note(by, number, forms.read(typed, NewBreedingSign.class, SignForm.TIME));
                    return visit.getBase() + "/animals/" + number + "/breeding";
                },
                typed -> page(by, number, typed));
    }

    private TemplateInstance page(Standing by, String number, Typed typed) {
        var story = stories.of(by, number, visit.getToday());
        return Templates.cycle(
                story,
                choices.kinds(story.laysEggs()),
                choices.howKnown(),
                choices.animals(by, Sex.MALE, typed.text("male")),
                typed);
    }
}
