package org.demebook.chart;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.demebook.chart.Figure.Sex;
import org.demebook.chart.Figure.SireLink;
import org.jspecify.annotations.Nullable;

/**
 * Pedigrees to draw. Those of resources/reference are described in its README; that the parents of somebody are related is taken
 * from there too: their F, by R's pedigreemm and nadiv, is the kinship of their parents.
 */
final class Pedigrees {
    private Pedigrees() {}

    record Named(String name, List<Figure> figures) {
        @Override
        public String toString() {
            return name;
        }
    }

    /** The worked pedigree, nets of up to 62 ancestors, a whole population of 56, and one of each kind of figure. */
    static Stream<Named> all() {
        return Stream.of(
                new Named("worked pedigree", worked()),
                new Named("of every kind", ofEveryKind()),
                new Named("Charles II of Spain, 62", ancestors("habsburg", "Charles II of Spain", 62)),
                new Named("tiny loops, whole", whole("p1-tiny-loops")),
                new Named("overlapping generations, 62", ancestors("p2-overlap", deepest("p2-overlap"), 62)),
                new Named("half known, 62", ancestors("p3-half-known", deepest("p3-half-known"), 62)),
                new Named("popular sire, 31", ancestors("p4-popular-sire", deepest("p4-popular-sire"), 31)),
                new Named("popular sire, 62", ancestors("p4-popular-sire", deepest("p4-popular-sire"), 62)),
                new Named("demes, 62", ancestors("p5-bottleneck-demes", deepest("p5-bottleneck-demes"), 62)),
                new Named("large and deep, 62", ancestors("p6-large-deep", deepest("p6-large-deep"), 62)));
    }

    /** Our invented M-001 to M-024; F computed by hand: 022 1/8, 023 1/4, all others 0. */
    static List<Figure> worked() {
        return List.of(
                Figure.of("001", Sex.FEMALE, "M-001").asDead().asFounder(),
                Figure.of("002", Sex.MALE, "M-002").asDead().asFounder(),
                Figure.of("003", Sex.FEMALE, "M-003").asDead().asFounder(),
                Figure.of("004", Sex.MALE, "M-004").asDead().asFounder(),
                Figure.of("005", Sex.FEMALE, "M-005").asDead().asFounder(),
                Figure.of("006", Sex.MALE, "M-006").asFounder(),
                Figure.of("010", Sex.FEMALE, "M-010").asDead().withParents("001", "002", false),
                Figure.of("011", Sex.MALE, "M-011").asDead().withParents("001", "002", false),
                Figure.of("012", Sex.MALE, "M-012").withParents("003", "004", false),
                Figure.of("013", Sex.FEMALE, "M-013").withParents("003", "004", false),
                Figure.of("014", Sex.MALE, "M-014").withParents("005", "002", false),
                Figure.of("020", Sex.FEMALE, "M-020").withParents("010", "012", false),
                Figure.of("021", Sex.MALE, "M-021").withParents("013", "011", false),
                Figure.of("022", Sex.MALE, "M-022").withParents("010", "014", true),
                Figure.of("023", Sex.FEMALE, "M-023")
                        .withParents("010", "011", true)
                        .asAsked()
                        .withLink("/animals/M-023"),
                Figure.of("024", Sex.MALE, "M-024").withParents("010", "012", false));
    }

    /** A withheld dam, an unknown sire, one parent alone, possible sires of which one is related to the dam. */
    static List<Figure> ofEveryKind() {
        return List.of(
                Figure.withheld("key-of-the-withheld", Sex.FEMALE),
                Figure.unknown("key-of-the-unknown", Sex.MALE),
                Figure.of("d", Sex.FEMALE, "M-013", "2015")
                        .withParents("key-of-the-withheld", "key-of-the-unknown", false)
                        .withLink("/animals/M-013?tab=a&b"),
                Figure.of("s1", Sex.MALE, "M-014"),
                Figure.of("s2", Sex.MALE, "M-022", "2018", "Marrowfin Cay")
                        .withParents("key-of-the-withheld", null, false)
                        .asDead(),
                Figure.of("y", Sex.UNKNOWN, "M-101")
                        .asAsked()
                        .withPossibleSires("d", List.of(new SireLink("s1", false), new SireLink("s2", true))));
    }

    private static List<Figure> whole(String name) {
        var records = records(name + ".csv");
        var deepest = deepest(name);
        return figures(name, records, records.keySet(), deepest);
    }

    private static List<Figure> ancestors(String name, String asked, int most) {
        var records = records(name + ".csv");
        var keys = new LinkedHashSet<String>();
        var next = new ArrayDeque<>(List.of(asked));
        while (!next.isEmpty() && keys.size() < most) {
            var key = next.remove();
            if (keys.add(key) && records.containsKey(key)) {
                Stream.of("dam", "sire")
                        .map(parent -> records.get(key).get(parent))
                        .filter(parent -> !parent.isEmpty())
                        .forEach(next::add);
            }
        }
        return figures(name, records, keys, asked);
    }

    private static List<Figure> figures(String name, Map<String, CSVRecord> records, Set<String> keys, String asked) {
        var inbreeding = records(name + ".F.csv");
        var sires = records.values().stream().map(it -> it.get("sire")).collect(Collectors.toSet());
        var figures = new ArrayList<Figure>();
        for (var key : keys) {
            var entry = records.get(key);
            if (entry == null) {
                figures.add(Figure.of(key, sires.contains(key) ? Sex.MALE : Sex.FEMALE, key)
                        .asFounder());
                continue;
            }
            var dam = among(keys, entry.get("dam"));
            var sire = among(keys, entry.get("sire"));
            boolean related = dam != null
                    && sire != null
                    && Double.parseDouble(inbreeding.get(key).get("F")) > 0;
            var figure = Figure.of(
                            key, entry.get("sex").equals("M") ? Sex.MALE : Sex.FEMALE, key, entry.get("birthYear"))
                    .withParents(dam, sire, related)
                    .withLink("/animals/" + figures.size());
            figures.add(key.equals(asked) ? figure.asAsked() : figure);
        }
        return figures;
    }

    private static @Nullable String among(Set<String> keys, String key) {
        return keys.contains(key) ? key : null;
    }

    private static String deepest(String name) {
        var records = records(name + ".csv");
        var depths = new LinkedHashMap<String, Integer>();
        records.keySet().forEach(key -> depth(key, records, depths));
        return depths.entrySet().stream()
                .max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .orElseThrow()
                .getKey();
    }

    private static int depth(String key, Map<String, CSVRecord> records, Map<String, Integer> depths) {
        var entry = records.get(key);
        if (entry == null) {
            return 0;
        }
        var known = depths.get(key);
        if (known != null) {
            return known;
        }
        int depth = 1 + Math.max(depth(entry.get("sire"), records, depths), depth(entry.get("dam"), records, depths));
        depths.put(key, depth);
        return depth;
    }

    private static Map<String, CSVRecord> records(String file) {
        var in = Pedigrees.class.getResourceAsStream("/reference/" + file);
        var format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var reader = new InputStreamReader(in, StandardCharsets.UTF_8)) {
            var records = new LinkedHashMap<String, CSVRecord>();
            format.parse(reader).forEach(it -> records.put(it.get("id"), it));
            return records;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
