package org.demebook.web.pairing;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.planning.Breeders;
import org.demebook.planning.BreedersView;
import org.demebook.planning.BreedersView.Breeder;
import org.demebook.planning.PairingsView;
import org.demebook.planning.PairingsView.Pairing;
import org.demebook.planning.Planner;
import org.demebook.planning.Planner.Question;
import org.demebook.plot.Caption;
import org.demebook.plot.HeatMap;
import org.demebook.plot.Measure;
import org.demebook.plot.Name;
import org.demebook.plot.Numbers;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Pairing: a keeper's animals, and for one of them the partners across collections. */
@Path("/populations/{population}/pairings")
@Produces(Pages.HTML)
class PairingsPage {
    private static final int SUGGESTED = 10;
    private static final int PARTNERS = 12;
    private static final int ALL_PARTNERS = 200;
    private static final int DECIMALS = 4;

    /** Kinships of an animal with itself, a parent or full sibling, a half sibling, and of more distant relatives. */
    private static final List<String> LIMITS = List.of("0", "0.03125", "0.0625", "0.125", "0.25");

    private static final String USUAL_LIMIT = "0.125";

    @CheckedTemplate(basePath = "pairing", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance pairings(Overview overview, Typed typed);

        static native TemplateInstance partners(
                String animal, @Nullable Partners partners, List<Option> limits, Typed typed);
    }

    /** What may be asked besides. */
    record Asked(
            @Nullable LocalDate pairOn,
            @Nullable @DecimalMin("0") @DecimalMax("1") BigDecimal maximumInbreeding,
            @Nullable @Min(1) @Max(30) Integer young) {
        static final Asked NOTHING = new Asked(null, null, null);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Planner planner;

    @Inject
    Breeders breeders;

    @GET
    public Response pairings(@RestPath String population, @Context UriInfo uri) {
        var by = visit.in(population);
        var typed = Typed.of(new MultivaluedHashMap<>(uri.getQueryParameters()));
        var animal = typed.text("for");
        return animal == null
                ? forms.look(
                        typed,
                        () -> Templates.pairings(overview(by, asked(typed)), typed),
                        refused -> Templates.pairings(overview(by, Asked.NOTHING), refused))
                : forms.look(
                        typed,
                        () -> Templates.partners(animal, partners(by, animal, typed), limits(), offered(typed)),
                        refused -> Templates.partners(animal, null, limits(), offered(refused)));
    }

    private Asked asked(Typed typed) {
        return forms.read(typed, Asked.class, "for", "all");
    }

    private Partners partners(Standing by, String animal, Typed typed) {
        var asked = asked(typed);
        int limit = typed.text("all") == null ? PARTNERS : ALL_PARTNERS;
        return Partners.of(
                planner.partners(
                        by, animal, Question.of(asked.maximumInbreeding(), asked.young(), limit, asked.pairOn())),
                limit,
                visit.getToday());
    }

    private static Typed offered(Typed typed) {
        return typed.text("maximumInbreeding") == null ? typed.with("maximumInbreeding", USUAL_LIMIT) : typed;
    }

    private List<Option> limits() {
        return LIMITS.stream()
                .map(limit -> {
                    double value = Double.parseDouble(limit);
                    var fraction = Fractions.of(value);
                    return new Option(limit, fraction == null ? visit.number(value) : fraction);
                })
                .toList();
    }

    private Overview overview(Standing by, Asked asked) {
        var own = breeders.of(by, asked.pairOn());
        var pairs =
                planner.pairings(by, Question.of(asked.maximumInbreeding(), asked.young(), SUGGESTED, asked.pairOn()));
        return new Overview(
                own.pairOn(),
                own.meanKinship(),
                Overview.Some.of(pairable(own, Sex.FEMALE)),
                Overview.Some.of(pairable(own, Sex.MALE)),
                Overview.Some.of(own.animals().stream().filter(animal -> animal.hindrance() != null)),
                (int) own.animals().stream()
                        .filter(animal -> animal.sex() == Sex.UNKNOWN)
                        .count(),
                map(own),
                own.throughAncestorsNotShown(),
                pairs.pairings().stream().map(PairingsPage::suggestion).toList(),
                pairs.scope().equals("population"));
    }

    private static Stream<Breeder> pairable(BreedersView own, Sex sex) {
        return own.animals().stream().filter(animal -> animal.sex() == sex && animal.isPairable());
    }

    private static Overview.Suggestion suggestion(Pairing pair) {
        return new Overview.Suggestion(
                pair.dam().number(),
                pair.sire().number(),
                yours(pair.dam())
                        ? pair.dam().number()
                        : yours(pair.sire()) ? pair.sire().number() : null,
                pair.inbreedingOfYoung(),
                Fractions.of(pair.inbreedingOfYoung()),
                pair.keep(),
                pair.kept().get(0).geneDiversity(),
                pair.kept().get(pair.keep()).geneDiversity());
    }

    private static boolean yours(PairingsView.Parent parent) {
        return parent.keptBy() == null;
    }

    private HeatMap map(BreedersView own) {
        var words = pages.words(PairingMessages.class);
        var names = own.compared().stream()
                .map(number -> new Name(number, visit.getBase() + "/animals/" + number))
                .toList();
        return HeatMap.symmetric(
                new Caption("kinship", words.map(), words.mapShows(), words.asTable(), words.mapNothing()),
                names,
                symmetric(own.kinship()),
                HeatMap.KINSHIP_STEPS,
                new Measure(words.kinship(), Numbers.of(visit.getLocale()), DECIMALS, true),
                new HeatMap.Words(words.animal(), words.withheld()));
    }

    /** To the last bit: each with each was added up in its own order. */
    private static double[][] symmetric(double[][] kinship) {
        for (int row = 0; row < kinship.length; row++) {
            for (int column = 0; column < row; column++) {
                kinship[row][column] = kinship[column][row];
            }
        }
        return kinship;
    }
}
