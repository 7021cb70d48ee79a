package org.demebook.web.pairing;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Regions;
import org.demebook.keeper.Standing;
import org.demebook.planning.PairingTerms;
import org.demebook.planning.PairingTermsView;
import org.demebook.planning.TermsOfCollections;
import org.demebook.web.Forms;
import org.demebook.web.FrameMessages;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;

/** What the collections of a keeper can bear in the coming season: stated, changed, withdrawn. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class PairingTermsPage {
    private static final String REGIONS = "exchangeWith[]";
    private static final String WHICH = "exchange";
    private static final String ANY = "any";
    private static final String ONLY = "only";

    @CheckedTemplate(basePath = "pairing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance terms(List<CollectionTerms> collections);

        static native TemplateInstance collectionTerms(
                CollectionTerms stated, List<Option> borders, List<Option> which, List<Option> regions, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Keepers keepers;

    @Inject
    Regions regions;

    @Inject
    TermsOfCollections terms;

    @GET
    @Path("pairing-terms")
    public Response all(@RestPath String population) {
        var by = visit.in(population);
        return pages.show(Templates.terms(keepers.collections(by).stream()
                .map(collection -> new CollectionTerms(collection, terms.get(by, collection.id())))
                .toList()));
    }

    @GET
    @Path("collections/{collection}/pairing-terms")
    public Response one(@RestPath String population, @RestPath UUID collection) {
        var by = visit.in(population);
        var view = terms.get(by, collection);
        return pages.show(page(by, view, typed(view)));
    }

    @POST
    @Path("collections/{collection}/pairing-terms")
    public Response state(@RestPath String population, @RestPath UUID collection, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    terms.state(by, collection, read(typed));
                    return pages.goTo(visit.getBase() + "/pairing-terms");
                },
                refused -> page(by, terms.get(by, collection), refused));
    }

    @POST
    @Path("collections/{collection}/pairing-terms/withdrawal")
    public Response withdraw(@RestPath String population, @RestPath UUID collection) {
        terms.withdraw(visit.in(population), collection);
        return pages.goTo(visit.getBase() + "/pairing-terms");
    }

    /** Regions count only where some are chosen; then none means none but the collection's own. */
    private PairingTerms read(Typed typed) {
        var said = forms.read(typed, PairingTerms.class, WHICH, REGIONS);
        return new PairingTerms(
                said.littersAtMost(),
                said.malesAwayAtMost(),
                said.farthestKilometres(),
                said.mayCrossBorders(),
                typed.has(WHICH, ONLY) ? typed.values(REGIONS) : null,
                said.notes());
    }

    private TemplateInstance page(Standing by, PairingTermsView view, Typed typed) {
        var words = pages.words(PairingMessages.class);
        var frame = pages.words(FrameMessages.class);
        return Templates.collectionTerms(
                new CollectionTerms(keepers.collection(by, view.collection()), view),
                List.of(Option.none(words.notSaid()), new Option("true", frame.yes()), new Option("false", frame.no())),
                List.of(new Option(ANY, words.anyRegion()), new Option(ONLY, words.onlyThese())),
                regions.fixed(by.populationId()).names().stream()
                        .map(name -> new Option(name, name))
                        .toList(),
                typed);
    }

    private static Typed typed(PairingTermsView view) {
        var values = new MultivaluedHashMap<String, String>();
        if (view.exchangeWith() != null) {
            values.put(REGIONS, List.copyOf(view.exchangeWith()));
        }
        return Typed.of(values)
                .with("littersAtMost", view.littersAtMost())
                .with("malesAwayAtMost", view.malesAwayAtMost())
                .with("farthestKilometres", view.farthestKilometres())
                .with("mayCrossBorders", view.mayCrossBorders() == null ? "" : view.mayCrossBorders())
                .with(WHICH, view.exchangeWith() == null ? ANY : ONLY)
                .with("notes", view.notes());
    }
}
