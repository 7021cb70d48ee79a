package org.demebook.web.animal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.RelationView;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** How an animal is related to those of the one who looks, and to any other that they ask for. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class KinshipPage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance kinship(AnimalView animal, String name, Related related);
    }

    /**
     * @param asked what was typed; empty where nothing was
     * @param wrong why there is no answer to it; null where there is one, or nothing was asked
     * @param other the answer to it; null where there is none
     * @param mine the closest first
     * @param more whether there are more of mine than are told
     */
    public record Related(
            String asked, @Nullable String wrong, @Nullable Relative other, List<Relative> mine, boolean more) {}

    /**
     * @param name what the one who looks calls it; empty where they have no name for it
     * @param fraction empty where the kinship is none that people can read
     */
    public record Relative(RelationView relation, String name, String fraction) {
        private static final int USUAL_DIGITS = 4;
        private static final int MOST_DIGITS = 7;

        /** So many that a fraction is written out, if that takes few. */
        public int getDigits() {
            int digits = USUAL_DIGITS;
            while (!fraction.isEmpty() && digits < MOST_DIGITS && !isWritten(digits)) {
                digits++;
            }
            return digits == MOST_DIGITS ? USUAL_DIGITS : digits;
        }

        private boolean isWritten(int digits) {
            double scaled = relation.kinship() * Math.pow(10, digits);
            return Math.abs(scaled - Math.rint(scaled)) < 1e-6;
        }

        static Relative of(RelationView relation, String name) {
            return new Relative(relation, name, relation.bySire() == null ? Fraction.of(relation.kinship()) : "");
        }
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Animals animals;

    @Inject
    Ancestries ancestries;

    @GET
    @Path("{number}/kinship")
    public Response kinship(
            @RestPath String population, @RestPath String number, @RestQuery("with") @Nullable String with) {
        var by = visit.in(population);
        var animal = animals.get(by, number);
        var mine = animals.page(by, null, true, true, null, Page.MOST);
        Map<String, AnimalView> byNumber =
                mine.items().stream().collect(Collectors.toMap(AnimalView::number, Function.identity()));
        var relations = ancestries.relations(by, animal.number(), byNumber.keySet()).stream()
                .map(relation -> Relative.of(relation, name(byNumber, relation)))
                .toList();
        var related = with == null || with.isBlank()
                ? new Related("", null, null, relations, mine.next() != null)
                : with(by, animal, with.strip(), relations, mine.next() != null);
        return pages.show(related.wrong() == null ? 200 : 422, Templates.kinship(animal, Listed.name(animal), related));
    }

    private static String name(Map<String, AnimalView> byNumber, RelationView relation) {
        var animal = byNumber.get(relation.other());
        return animal == null ? "" : Listed.name(animal);
    }

    private Related with(Standing by, AnimalView animal, String asked, List<Relative> mine, boolean more) {
        try {
            var elsewhere = ancestries
                    .elsewhere(by, asked)
                    .map(of -> of.ancestry().animal().number());
            var other = elsewhere.isPresent() ? null : animals.get(by, asked);
            var found = ancestries
                    .relations(by, animal.number(), List.of(elsewhere.orElseGet(() -> Objects.requireNonNull(other)
                            .number())))
                    .stream()
                    .findFirst()
                    .map(relation -> Relative.of(relation, other == null ? "" : Listed.name(other)))
                    .orElse(null);
            return new Related(asked, null, found, mine, more);
        } catch (Refusal refusal) {
            return new Related(asked, refusal.problem().detail(), null, mine, more);
        }
    }
}
