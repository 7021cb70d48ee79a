package org.demebook.census;

import static org.demebook.problem.ProblemType.COUNTS_NOT_SAFE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.disclosure.Audit;
import org.demebook.disclosure.Audit.Interval;
import org.demebook.disclosure.Release;
import org.demebook.disclosure.Rules;
import org.demebook.disclosure.Suppression;
import org.demebook.disclosure.Tally;
import org.demebook.problem.Refusal;

/**
 * Makes a release of counts: puts classes together, chooses what is withheld, has it audited jointly with all earlier
 * releases, and refuses what is not safe. Nothing of it is stored. Takes seconds.
 */
final class Preparation {
    static final String WITHHELD =
            "count withheld: too few keepers stand behind it, one of them holds most of it, or such"
                    + " a count would follow from it";

    /** An earlier release with the animals behind it. */
    record Earlier(CountReleaseView view, List<CountedAnimal> animals) {
        List<Heading> headings() {
            return view.cells().stream().map(Heading::of).toList();
        }
    }

    private final LocalDate day;
    private final List<CountedAnimal> animals;
    private final List<String> regions;
    private final List<Heading> headings;
    private final Respondents respondents;
    private final int daysOfAgeToBreed;
    private final Tally everything;
    private final Rules rules;

    /** @param regions that the association fixed */
    Preparation(
            LocalDate day,
            List<CountedAnimal> animals,
            List<String> regions,
            Respondents respondents,
            int daysOfAgeToBreed,
            CountRulesView parameters) {
        this.day = day;
        this.animals = animals;
        this.regions = regions;
        this.respondents = respondents;
        this.daysOfAgeToBreed = daysOfAgeToBreed;
        rules = new Rules(parameters.fewestKeepers(), parameters.percent());
        everything = tally(List.of(Heading.EVERYTHING), Places.names(animals, regions, List.of()), animals, day);
        headings = TablePlan.headings(
                animals, regions, heading -> everything.respondents(heading.figure()), parameters.fewestKeepers());
    }

    private Tally tally(List<Heading> told, Set<String> places, List<CountedAnimal> counted, LocalDate when) {
        return respondents.tally(TablePlan.plan(told, places, counted, when, daysOfAgeToBreed), counted);
    }

    /** How many households stand behind everything. */
    int households() {
        return everything.respondents(Heading.EVERYTHING.figure());
    }

    /** The cells that may be published. Refuses with COUNTS_NOT_SAFE. */
    List<Cell> cells(List<Earlier> earlier) {
        var places = new Places(animals, regions, headings, earlier);
        var past = places.earlier().stream()
                .map(release -> release(release, places.names()))
                .toList();
        var tally = tally(headings, places.names(), animals, day);
        try {
            var release = Suppression.choose(past, tally, rules);
            requireSomething(release, earlier);
            requireSafe(Audit.of(past, release, rules), earlier);
            return cells(release, Audit.intervals(release, rules));
        } catch (ArithmeticException unsolved) {
            throw new Refusal(
                    COUNTS_NOT_SAFE,
                    "It could not be proved that the counts of %s tell nothing about a keeper; nothing was released. (%s)"
                            .formatted(day, unsolved.getMessage()));
        }
    }

    /** A figure that was told but cannot be counted again, since records were corrected, tells nothing of these animals. */
    private Release release(Earlier earlier, Set<String> places) {
        var past = tally(
                earlier.headings(), places, earlier.animals(), earlier.view().countedOn());
        var told = new LinkedHashSet<String>();
        for (var cell : earlier.view().cells()) {
            var figure = Heading.of(cell).figure();
            if (cell.count() != null && cell.count() == past.value(figure)) {
                told.add(figure.name());
            }
        }
        return new Release(past, told);
    }

    private void requireSomething(Release release, List<Earlier> earlier) {
        if (release.told().isEmpty()) {
            throw new Refusal(
                    COUNTS_NOT_SAFE,
                    "Animals of %s keepers were counted for %s, and %s; every count would tell what one of them has. Release counts when more keepers take part or more has changed."
                            .formatted(CountRange.of(households()), day, releases(earlier)));
        }
    }

    private void requireSafe(Audit audit, List<Earlier> earlier) {
        if (!audit.passed()) {
            throw new Refusal(
                    COUNTS_NOT_SAFE,
                    "The counts of %s did not pass the audit, and %s; something about a keeper would follow: %s. Nothing was released; release counts when more has changed."
                            .formatted(day, releases(earlier), String.join(", ", audit.unsafe())));
        }
    }

    private static String releases(List<Earlier> earlier) {
        return earlier.isEmpty()
                ? "none were released before"
                : earlier.stream()
                        .map(release -> release.view().countedOn().toString())
                        .collect(Collectors.joining(", ", "those of ", " are known"));
    }

    private List<Cell> cells(Release release, Map<String, Interval> intervals) {
        var cells = new ArrayList<Cell>();
        for (var heading : headings) {
            var figure = heading.figure();
            var interval = intervals.get(figure.name());
            cells.add(
                    interval == null
                            ? heading.told(release.tally().value(figure))
                            : heading.withheld(
                                    interval.lowest(), interval.highest() < 0 ? null : interval.highest(), WITHHELD));
        }
        return cells;
    }
}
