package org.demebook.web.members;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.demebook.keeper.Asker;
import org.demebook.registry.NewPopulation;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;
import org.demebook.taxon.BirthMode;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;

/** A population is founded; the form for it is at an address of its own. */
@Path("/populations")
@Produces(Pages.HTML)
class FoundPage {
    /** Not a field of the API: a population whose figures the new one begins with. */
    static final String FIGURES_OF = "figuresOf";

    @CheckedTemplate(basePath = "members", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance found(List<Option> modes, List<Option> profiles, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Populations populations;

    @POST
    public Response found(MultivaluedMap<String, String> form) {
        var by = visit.asker();
        var typed = Typed.of(form);
        return forms.once(
                by.keeperId(),
                typed,
                () -> {
                    var stated = forms.read(typed, NewPopulation.class, FIGURES_OF);
                    var founded = populations.found(by, withFigures(by, stated, typed.value(FIGURES_OF)));
                    return "/populations/" + founded.code() + "/members";
                },
                this::page);
    }

    private NewPopulation withFigures(Asker by, NewPopulation stated, String like) {
        var profile = populations.of(by).stream()
                .filter(population -> population.code().equals(like))
                .map(PopulationView::profile)
                .findFirst()
                .orElse(null);
        return new NewPopulation(
                stated.code(), stated.name(), stated.taxon(), stated.locality(), stated.birthMode(), profile);
    }

    TemplateInstance page(Typed typed) {
        var words = pages.words(MembersMessages.class);
        var modes = Arrays.stream(BirthMode.values())
                .map(mode -> new Option(mode.word(), words.bearing(mode)))
                .toList();
        var profiles = new ArrayList<>(List.of(Option.none(words.usualProfile())));
        visit.getPopulations()
                .forEach(population -> profiles.add(new Option(population.code(), words.profileOf(population.name()))));
        return Templates.found(modes, profiles, typed);
    }
}
