package org.demebook.census;

import static org.demebook.problem.ProblemType.COUNTS_NOT_SAFE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
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
    record Earlier(CountReleaseView view, List<CountedAnimal> animals) {}

    private final LocalDate day;
    private final List<CountedAnimal> animals;
    private final List<Heading> headings;
    private final Respondents respondents;
    private final int daysOfAgeToBreed;
    private final Tally tally;
    private final Rules rules;

    Preparation(
            LocalDate day,
            List<CountedAnimal> animals,
            Respondents respondents,
            int daysOfAgeToBreed,
            CountRulesView parameters) {
        this.day = day;
        this.animals = animals;
        this.respondents = respondents;
        this.daysOfAgeToBreed = daysOfAgeToBreed;
        rules = new Rules(parameters.fewestKeepers(), parameters.percent());
        var all =
                respondents.tally(TablePlan.plan(List.of(Heading.EVERYTHING), animals, day, daysOfAgeToBreed), animals);
        headings =
                TablePlan.headings(animals, heading -> all.respondents(heading.figure()), parameters.fewestKeepers());
        tally = respondents.tally(TablePlan.plan(headings, animals, day, daysOfAgeToBreed), animals);
    }

    /** How many households stand behind everything. */
    int households() {
        return tally.respondents(Heading.EVERYTHING.figure());
    }

    /** The cells that may be published. Refuses with COUNTS_NOT_SAFE. */
    List<Cell> cells(List<Earlier> earlier) {
        var past = earlier.stream().map(this::release).toList();
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
    private Release release(Earlier earlier) {
        var figures = earlier.view().cells().stream().map(Heading::of).toList();
        var past = respondents.tally(
                TablePlan.plan(figures, earlier.animals(), earlier.view().countedOn(), daysOfAgeToBreed),
                earlier.animals());
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
                            ? heading.told(tally.value(figure))
                            : heading.withheld(
                                    interval.lowest(), interval.highest() < 0 ? null : interval.highest(), WITHHELD));
        }
        return cells;
    }
}
