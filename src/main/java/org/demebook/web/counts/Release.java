package org.demebook.web.counts;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.demebook.census.CountReleaseView;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** A release in the words of the one who reads it. */
public final class Release {
    private static final String ALL = "all";
    private static final String UNKNOWN = "unknown";
    private static final Pattern SOME = Pattern.compile("(\\d+) to (\\d+)");
    private static final Pattern DECADE = Pattern.compile("(\\d{3})0s");
    private static final Pattern BEFORE = Pattern.compile("before (\\d{4})");

    private final CountReleaseView view;
    private final CountsMessages words;
    private final Visit visit;

    Release(CountReleaseView view, CountsMessages words, Visit visit) {
        this.view = view;
        this.words = words;
        this.visit = visit;
    }

    public CountReleaseView getView() {
        return view;
    }

    public String getName() {
        return Objects.requireNonNullElse(view.name(), view.population());
    }

    /** Where programs find it. */
    public String getAddress() {
        return "/api/v1/populations/%s/count-releases/%s".formatted(view.population(), view.countedOn());
    }

    public String getDay() {
        return visit.day(view.countedOn());
    }

    /** How many live: everything that is counted. */
    public CountTable.Cell getLiving() {
        return view.cells().stream()
                .filter(cell -> cell.sex().equals(ALL) && cell.age().equals(ALL) && isWhole(cell))
                .findFirst()
                .map(cell -> cell(words.living(), cell))
                .orElse(CountTable.Cell.none(words.living()));
    }

    public String getKeepers() {
        var some = SOME.matcher(view.keepers());
        if (some.matches()) {
            return words.between(Integer.parseInt(some.group(1)), Integer.parseInt(some.group(2)));
        }
        return view.keepers().startsWith("fewer") ? words.fewKeepers() : words.manyKeepers();
    }

    public String getGeneDiversity() {
        return decimal(view.geneDiversity());
    }

    public String getGenomeEquivalents() {
        return decimal(view.founderGenomeEquivalents());
    }

    private String decimal(@Nullable String told) {
        if (told == null) {
            return "";
        }
        var value = new BigDecimal(told);
        return visit.number(value, Math.max(0, value.scale()));
    }

    /** Why counts are withheld, each reason once, as the server words it. */
    public Set<String> getWhy() {
        return view.cells().stream()
                .map(Cell::informationWithheld)
                .filter(Objects::nonNull)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    public boolean isByRegion() {
        return view.cells().stream().anyMatch(cell -> !all(cell.region()));
    }

    /** Those that the release has. */
    public List<CountTable> getTables() {
        var tables = new ArrayList<CountTable>();
        var crossed = view.cells().stream().filter(Release::isWhole).toList();
        tables.add(crossed(crossed));
        var decades = view.cells().stream().filter(cell -> !all(cell.born())).toList();
        if (!decades.isEmpty()) {
            tables.add(single(words.byDecade(), words.born(), decades, cell -> born(cell.born())));
        }
        var regions = view.cells().stream().filter(cell -> !all(cell.region())).toList();
        if (!regions.isEmpty()) {
            tables.add(single(words.byRegion(), words.region(), regions, cell -> region(cell.region())));
        }
        return tables;
    }

    private CountTable crossed(List<Cell> cells) {
        var sexes = allLast(cells, Cell::sex);
        var rows = allLast(cells, Cell::age).stream()
                .map(age -> new CountTable.Row(
                        age(age),
                        sexes.stream()
                                .map(sex -> find(
                                        sex(sex),
                                        cells,
                                        cell -> cell.sex().equals(sex)
                                                && cell.age().equals(age)))
                                .toList()))
                .toList();
        return new CountTable(
                words.bySexAndAge(), words.age(), sexes.stream().map(this::sex).toList(), rows);
    }

    private CountTable single(String title, String head, List<Cell> cells, Function<Cell, String> name) {
        var rows = cells.stream()
                .map(cell -> new CountTable.Row(name.apply(cell), List.of(cell(words.animals(), cell))))
                .toList();
        return new CountTable(title, head, List.of(words.animals()), rows);
    }

    private CountTable.Cell find(String column, List<Cell> cells, Predicate<Cell> wanted) {
        return cells.stream()
                .filter(wanted)
                .findFirst()
                .map(cell -> cell(column, cell))
                .orElse(CountTable.Cell.none(column));
    }

    private CountTable.Cell cell(String column, Cell cell) {
        if (cell.count() != null) {
            return new CountTable.Cell(column, visit.number(cell.count()), "");
        }
        int lowest = Objects.requireNonNullElse(cell.lowest(), 0);
        return new CountTable.Cell(
                column, "", cell.highest() == null ? words.atLeast(lowest) : words.between(lowest, cell.highest()));
    }

    /** In the order in which they were published, the total last. */
    private static List<String> allLast(List<Cell> cells, Function<Cell, String> word) {
        var found = cells.stream().map(word).collect(Collectors.toCollection(LinkedHashSet::new));
        if (found.remove(ALL)) {
            found.add(ALL);
        }
        return List.copyOf(found);
    }

    private static boolean isWhole(Cell cell) {
        return all(cell.born()) && all(cell.region());
    }

    private static boolean all(@Nullable String word) {
        return word == null || word.equals(ALL);
    }

    private String sex(String word) {
        return switch (word) {
            case "female" -> words.females();
            case "male" -> words.males();
            case ALL -> words.all();
            default -> words.unknownSex();
        };
    }

    private String age(String word) {
        return switch (word) {
            case "young" -> words.young();
            case "juvenile" -> words.juvenile();
            case "immature" -> words.immature();
            case "adult" -> words.adult();
            case ALL -> words.all();
            default -> words.unknownAge();
        };
    }

    private String born(@Nullable String word) {
        var text = Objects.requireNonNullElse(word, UNKNOWN);
        var decade = DECADE.matcher(text);
        if (decade.matches()) {
            return words.decade(decade.group(1) + "0", decade.group(1) + "9");
        }
        var before = BEFORE.matcher(text);
        return before.matches() ? words.before(before.group(1)) : words.unknown();
    }

    private String region(@Nullable String word) {
        return word == null || word.equals("not stated") ? words.notStated() : word;
    }
}
