package org.demebook.web.handover;

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
import java.util.Set;
import java.util.TreeSet;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.problem.Rule;
import org.demebook.rearing.Rearing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.demebook.transfer.Kind;
import org.demebook.transfer.NewTransfer;
import org.demebook.transfer.Transfers;
import org.demebook.web.Forms;
import org.demebook.web.FrameMessages;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.demebook.web.handover.Choices.Choosing;
import org.demebook.web.handover.Told.Condition;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** To hand an animal over: which one, how, and to whom. */
@Path("/populations/{population}/transfers")
@Produces(Pages.HTML)
class OfferPage {
    @CheckedTemplate(basePath = "web/handover", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance choose(Choosing choices);

        static native TemplateInstance offer(
                AnimalView animal,
                Kind[] kinds,
                Set<String> known,
                List<Condition> missing,
                boolean gravid,
                Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Transfers transfers;

    @Inject
    Rearing rearing;

    @Inject
    Choices choices;

    @Inject
    Told told;

    @Inject
    CodePage codes;

    /** @param animal studbook number; without one they are listed to choose from */
    @GET
    @Path("new")
    public Response open(
            @RestPath String population,
            @QueryParam("animal") @Nullable String animal,
            @QueryParam("to") @Nullable String to,
            @QueryParam("after") @Nullable String after) {
        var by = visit.in(population);
        if (animal == null || animal.isBlank()) {
            return pages.show(Templates.choose(choices.of(by, after)));
        }
        var found = animals.get(by, animal);
        return pages.show(page(
                by,
                found,
                Typed.nothing()
                        .with("animal", found.number())
                        .with("kind", usual(by, found).word())
                        .with("to", to)));
    }

    @POST
    public Response offer(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var typed = Typed.of(form);
        return codes.shownOnce(
                () -> transfers.offer(by, forms.read(addressed(typed), NewTransfer.class)),
                work -> forms.once(
                        by.keeperId(), typed, work, again -> page(by, animals.get(by, again.value("animal")), again)));
    }

    /** One of the two ways is chosen; says so in the words of the form, in which both stand. */
    private Typed addressed(Typed typed) {
        var words = pages.words(OfferMessages.class);
        boolean byCode = typed.has("withClaimCode", "true");
        if (byCode == (typed.text("to") != null)) {
            var what = byCode ? words.codeNeedsNoName() : words.nameOrCode();
            throw new Refusal(
                    ProblemType.INVALID_VALUES,
                    pages.words(FrameMessages.class).lookAtFields(),
                    List.of(Finding.error("to", typed.text("to"), what)));
        }
        return typed;
    }

    private TemplateInstance page(Standing by, AnimalView animal, Typed typed) {
        return Templates.offer(animal, Kind.values(), known(by), missing(by, animal), isGravid(typed), typed);
    }

    /** A lent animal goes back to its owner, and nowhere else. */
    private Kind usual(Standing by, AnimalView animal) {
        var owner = animal.held() == null ? null : animal.held().owner();
        return owner == null || keepers.collectionIds(by).contains(owner) ? Kind.SALE : Kind.LOAN_RETURN;
    }

    /** Sign-in names of those with whom animals were exchanged lately. */
    private Set<String> known(Standing by) {
        var known = new TreeSet<String>();
        transfers.page(by, null, null, Page.USUAL).items().stream()
                .map(transfer -> transfer.given() ? transfer.to() : transfer.from())
                .filter(Objects::nonNull)
                .forEach(known::add);
        return known;
    }

    private List<Condition> missing(Standing by, AnimalView animal) {
        return !choices.isYoung(animal)
                ? List.of()
                : told.conditions(rearing.readiness(by, List.of(animal)).get(0)).stream()
                        .filter(condition -> !condition.met())
                        .toList();
    }

    /** Whether a refusal said so, this time or before. */
    private static boolean isGravid(Typed typed) {
        return typed.has("leave[0].rule", Rule.GRAVID_TRANSFER.word())
                || typed.getProblem() != null
                        && typed.getProblem().findings().stream()
                                .anyMatch(finding -> finding.rule() == Rule.GRAVID_TRANSFER);
    }
}
