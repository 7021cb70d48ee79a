package org.demebook.web.pairing;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.demebook.planning.UnnamedPartners;
import org.demebook.planning.UnnamedPartnersView;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** Partners that nobody shows, and the question to the keeper of one of them. */
@Path("/populations/{population}/animals/{number}/unnamed-partners")
@Produces(Pages.HTML)
class UnnamedPartnersPage {
    @CheckedTemplate(basePath = "pairing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance unnamedPartners(String animal, List<Option> partners, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Forms forms;

    @Inject
    UnnamedPartners partners;

    @GET
    public Response partners(@RestPath String population, @RestPath String number) {
        var by = visit.in(population);
        return forms.look(
                Typed.nothing(),
                () -> page(partners.of(by, number), Typed.nothing()),
                refused -> none(number, refused));
    }

    static TemplateInstance page(UnnamedPartnersView view, Typed typed) {
        return Templates.unnamedPartners(
                view.animal(),
                view.partners().stream()
                        .map(pseudonym -> new Option(pseudonym, pseudonym))
                        .toList(),
                typed);
    }

    static TemplateInstance none(String animal, Typed refused) {
        return Templates.unnamedPartners(animal, List.of(), refused);
    }
}
