package org.demebook.census;

import static org.demebook.census.Heading.ALL;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.disclosure.Plan;
import org.demebook.disclosure.Plan.Line;
import org.demebook.notation.Sex;

/**
 * The tables of every release: sexes by age classes, decades of birth, and regions; with totals. All are linked by the animals.
 *
 * <p>Where most counts would be withheld for want of keepers, classes are put together first: young and juvenile become
 * immature, then age classes go, then sexes; the oldest decades become one; regions go.
 */
final class TablePlan {
    private static final List<String> SEXES =
            Stream.of(Sex.values()).map(Sex::word).toList();
    private static final List<String> AGES =
            Stream.of(AgeClass.values()).map(AgeClass::word).toList();
    private static final List<String> FEWER_AGES =
            List.of(Heading.IMMATURE, AgeClass.ADULT.word(), AgeClass.UNKNOWN.word());

    private TablePlan() {}

    /**
     * The headings of a release, in the order in which they are published.
     *
     * @param regions that the association fixed
     * @param respondents how many households stand behind a heading
     */
    static List<Heading> headings(
            List<CountedAnimal> animals,
            List<String> regions,
            ToIntFunction<Heading> respondents,
            int fewestRespondents) {
        var headings = new LinkedHashSet<Heading>();
        headings.addAll(sexesByAge(respondents, fewestRespondents));
        headings.add(Heading.EVERYTHING);
        headings.addAll(decades(animals, respondents, fewestRespondents));
        headings.addAll(regions(regions, respondents, fewestRespondents));
        return List.copyOf(headings);
    }

    private static List<Heading> sexesByAge(ToIntFunction<Heading> respondents, int fewest) {
        for (var ages : List.of(AGES, FEWER_AGES)) {
            var cells = cross(SEXES, ages);
            if (mostAreOfEnough(cells, respondents, fewest)) {
                cells.addAll(cross(SEXES, List.of(ALL)));
                cells.addAll(cross(List.of(ALL), ages));
                return cells;
            }
        }
        var sexes = cross(SEXES, List.of(ALL));
        return mostAreOfEnough(sexes, respondents, fewest) ? sexes : List.of();
    }

    private static List<Heading> cross(List<String> sexes, List<String> ages) {
        var headings = new ArrayList<Heading>();
        sexes.forEach(sex -> ages.forEach(age -> headings.add(new Heading(sex, age, ALL, ALL))));
        return headings;
    }

    private static List<Heading> decades(List<CountedAnimal> animals, ToIntFunction<Heading> respondents, int fewest) {
        var decades = animals.stream()
                .map(CountedAnimal::born)
                .filter(born -> !born.equals(Heading.UNKNOWN))
                .mapToInt(Heading::year)
                .distinct()
                .sorted()
                .toArray();
        for (int joined = 0; joined + 1 < decades.length; joined++) {
            var headings = new ArrayList<Heading>();
            if (joined > 0) {
                headings.add(born(Heading.before(decades[joined + 1])));
            }
            for (int d = joined == 0 ? 0 : joined + 1; d < decades.length; d++) {
                headings.add(born(Heading.decade(decades[d])));
            }
            headings.add(born(Heading.UNKNOWN));
            if (headings.size() > 2 && mostAreOfEnough(headings, respondents, fewest)) {
                return headings;
            }
        }
        return List.of();
    }

    /** None where too few keepers state theirs: that all is not stated tells nothing. */
    private static List<Heading> regions(List<String> regions, ToIntFunction<Heading> respondents, int fewest) {
        var headings = regions.stream().map(TablePlan::in).collect(Collectors.toCollection(ArrayList::new));
        if (!mostAreOfEnough(headings, respondents, fewest)) {
            return List.of();
        }
        headings.add(in(Heading.NOT_STATED));
        return headings;
    }

    private static Heading in(String region) {
        return new Heading(ALL, ALL, ALL, region);
    }

    private static Heading born(String when) {
        return new Heading(ALL, ALL, when, ALL);
    }

    private static boolean mostAreOfEnough(
            Collection<Heading> headings, ToIntFunction<Heading> respondents, int fewest) {
        var filled = headings.stream()
                .mapToInt(respondents)
                .filter(households -> households > 0)
                .toArray();
        long enough =
                Arrays.stream(filled).filter(households -> households >= fewest).count();
        return 2 * enough > filled.length;
    }

    /**
     * The plan of a release. Base cells are all that an animal can be in on the day: who is young was born in the last year.
     *
     * @param places regions that are told apart, {@code not stated} among them; none where regions are not looked at
     * @param animals some more base cells are those of animals that were counted under another age to breed
     */
    static Plan plan(
            List<Heading> headings,
            Collection<String> places,
            List<CountedAnimal> animals,
            LocalDate day,
            int daysOfAgeToBreed) {
        var divisions = new ArrayList<List<String>>();
        divisions.add(base(animals, day, daysOfAgeToBreed));
        if (!places.isEmpty()) {
            divisions.add(places.stream().map(Heading::baseCell).toList());
        }
        return new Plan(divisions, headings.stream().map(Heading::figure).toList(), lines(headings));
    }

    private static List<String> base(List<CountedAnimal> animals, LocalDate day, int daysOfAgeToBreed) {
        Set<String> base = new LinkedHashSet<>();
        int oldest = animals.stream()
                .map(CountedAnimal::born)
                .filter(born -> !born.equals(Heading.UNKNOWN))
                .mapToInt(Heading::year)
                .min()
                .orElse(day.getYear());
        for (var sex : SEXES) {
            for (var age : AgeClass.values()) {
                for (int year = oldest / 10 * 10; year <= day.getYear(); year += 10) {
                    if (isPossible(age, year, day, daysOfAgeToBreed)) {
                        base.add(Heading.baseCell(sex, age.word(), Heading.decade(year)));
                    }
                }
                base.add(Heading.baseCell(sex, age.word(), Heading.UNKNOWN));
            }
        }
        animals.forEach(animal -> base.add(animal.baseCell()));
        return List.copyOf(base);
    }

    private static boolean isPossible(AgeClass age, int decade, LocalDate day, int daysOfAgeToBreed) {
        var first = LocalDate.of(decade, 1, 1);
        var last = LocalDate.of(decade + 9, 12, 31);
        var yearAgo = day.minusYears(1);
        var ageToBreed = day.minusDays(daysOfAgeToBreed);
        return switch (age) {
            case YOUNG -> !last.isBefore(yearAgo);
            case JUVENILE -> !last.isBefore(ageToBreed) && !first.isAfter(yearAgo);
            case ADULT -> !first.isAfter(ageToBreed);
            case UNKNOWN -> true;
        };
    }

    /** Rows and columns of the first table, and the others, as far as there are headings of them. */
    private static List<Line> lines(List<Heading> headings) {
        var lines = new ArrayList<Line>();
        for (var total : headings) {
            if (total.born().equals(ALL)
                    && total.sex().equals(ALL) != total.age().equals(ALL)) {
                lines.add(line(
                        total,
                        headings.stream()
                                .filter(Heading::isInner)
                                .filter(cell -> cell.sex().equals(total.sex())
                                        || cell.age().equals(total.age()))
                                .toList()));
            }
        }
        lines.add(line(
                Heading.EVERYTHING,
                headings.stream()
                        .filter(cell -> !cell.sex().equals(ALL) && cell.age().equals(ALL))
                        .toList()));
        lines.add(line(
                Heading.EVERYTHING,
                headings.stream()
                        .filter(cell -> cell.sex().equals(ALL) && !cell.age().equals(ALL))
                        .toList()));
        lines.add(line(
                Heading.EVERYTHING,
                headings.stream().filter(cell -> !cell.born().equals(ALL)).toList()));
        lines.add(line(
                Heading.EVERYTHING, headings.stream().filter(Heading::isRegion).toList()));
        return lines.stream().filter(line -> line.parts().size() > 1).toList();
    }

    private static Line line(Heading total, List<Heading> parts) {
        return new Line(
                total.figure().name(),
                parts.stream().map(part -> part.figure().name()).toList());
    }
}
