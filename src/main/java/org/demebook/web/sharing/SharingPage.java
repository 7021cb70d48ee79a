package org.demebook.web.sharing;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.Choices;
import org.demebook.consent.DisclosureView;
import org.demebook.consent.Disclosures;
import org.demebook.consent.EffectView;
import org.demebook.consent.Effects;
import org.demebook.consent.GrantState;
import org.demebook.consent.GrantView;
import org.demebook.consent.Grants;
import org.demebook.consent.Notice;
import org.demebook.consent.PlannedSharing;
import org.demebook.consent.ReadyChoice;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.rest.Page;
import org.demebook.web.Forms;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** What is shared by a ready choice or by hand, what others see of it now, and who looked. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class SharingPage {
    private static final int LATEST = 8;

    @CheckedTemplate(basePath = "sharing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance sharing(
                List<Shared> collections, List<DisclosureView> seen, String silent, String notice);

        static native TemplateInstance choice(
                CollectionView collection,
                @Nullable ReadyChoice present,
                ReadyChoice chosen,
                List<Reach> changes,
                int animals,
                Typed typed);

        static native TemplateInstance disclosures(Page<DisclosureView> seen);
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
    Choices choices;

    @Inject
    Grants grants;

    @Inject
    Effects effects;

    @Inject
    Disclosures disclosures;

    @Inject
    OtherNodes otherNodes;

    @GET
    @Path("sharing")
    public Response sharing(@RestPath String population) {
        var by = visit.in(population);
        var live = grants.page(by, GrantState.LIVE, null, null, Page.MOST).items();
        var now = effects.ofNow(by).stream().collect(Collectors.toMap(EffectView::collection, effect -> effect));
        var collections = keepers.collections(by).stream()
                .map(collection -> shared(by, collection, now.get(collection.id()), live))
                .toList();
        var seen = disclosures.page(by, null, LATEST).items();
        return pages.show(Templates.sharing(collections, seen, String.join(", ", otherNodes.silent(by)), Notice.TEXT));
    }

    private Shared shared(Standing by, CollectionView collection, EffectView now, List<GrantView> live) {
        var sharing = choices.sharing(by, collection.id());
        return new Shared(
                collection,
                sharing,
                Reach.now(now),
                now.animals(),
                otherNodes.of(by, sharing),
                live.stream()
                        .filter(grant ->
                                grant.choice() == null && grant.collection().equals(collection.id()))
                        .toList());
    }

    /** What a ready choice would change, before it is made. */
    @GET
    @Path("collections/{collection}/sharing")
    public Response choice(
            @RestPath String population, @RestPath UUID collection, @QueryParam("choice") @Nullable String choice) {
        var by = visit.in(population);
        return pages.show(choicePage(by, collection, chosen(by, collection, choice), Typed.nothing()));
    }

    @POST
    @Path("collections/{collection}/sharing")
    public Response choose(
            @RestPath String population, @RestPath UUID collection, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        var choice = chosen(by, collection, typed.text("choice"));
        var node = typed.text("node");
        return forms.attempt(
                typed,
                () -> {
                    if (node == null || node.isBlank()) {
                        choices.choose(by, collection, choice);
                    } else {
                        choices.chooseForNode(by, collection, choice, node);
                    }
                    return pages.goTo(visit.getBase() + "/sharing");
                },
                again -> choicePage(by, collection, choice, again));
    }

    /** What is asked for; else what stands. */
    private ReadyChoice chosen(Standing by, UUID collection, @Nullable String word) {
        for (var choice : ReadyChoice.values()) {
            if (choice.word().equals(word)) {
                return choice;
            }
        }
        return Objects.requireNonNullElse(choices.sharing(by, collection).choice(), ReadyChoice.PRIVATE);
    }

    private TemplateInstance choicePage(Standing by, UUID collectionId, ReadyChoice chosen, Typed typed) {
        var collection = keepers.collection(by, collectionId);
        var effect = effects.effect(by, new PlannedSharing(null, chosen, collectionId));
        return Templates.choice(
                collection,
                choices.sharing(by, collectionId).choice(),
                chosen,
                Reach.changed(effect),
                effect.animals(),
                typed);
    }

    @GET
    @Path("disclosures")
    public Response disclosures(@RestPath String population, @QueryParam("after") @Nullable String after) {
        var by = visit.in(population);
        return pages.show(Templates.disclosures(disclosures.page(by, Page.after(after), Page.USUAL)));
    }
}
