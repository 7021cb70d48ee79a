package org.demebook.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.demebook.chart.Outline.Entry;

/** Writes down the ancestors of whoever has no young in the chart, the animal asked about before all others. */
final class OutlineWriter {
    private final List<Figure> figures;
    private final Wording words;
    private final Map<Integer, Couple> parents = new HashMap<>();
    private final Set<Integer> told = new HashSet<>();

    private OutlineWriter(List<Figure> figures, List<Couple> couples, Wording words) {
        this.figures = figures;
        this.words = words;
        couples.forEach(couple -> couple.young().forEach(young -> parents.put(young, couple)));
    }

    static Outline write(List<Figure> figures, List<Couple> couples, Wording words) {
        var writer = new OutlineWriter(figures, couples, words);
        var withYoung = couples.stream().flatMap(it -> it.parents().stream()).collect(Collectors.toSet());
        var roots = new ArrayList<Entry>();
        all(figures).filter(it -> figures.get(it).asked()).forEach(it -> roots.add(writer.entry("", it)));
        all(figures)
                .filter(it -> !figures.get(it).asked() && !withYoung.contains(it))
                .forEach(it -> roots.add(writer.entry("", it)));
        return new Outline(roots);
    }

    private static Stream<Integer> all(List<Figure> figures) {
        return IntStream.range(0, figures.size()).boxed();
    }

    private Entry entry(String role, int animal) {
        var figure = figures.get(animal);
        var name = Telling.name(figure, words);
        if (!told.add(animal)) {
            return new Entry(role, name, List.of(), words.asAbove(), figure.link(), List.of());
        }
        var couple = parents.get(animal);
        var details = Telling.details(figure, couple != null && couple.allRelated(), words);
        return new Entry(role, name, details, "", figure.link(), couple == null ? List.of() : parents(couple));
    }

    private List<Entry> parents(Couple couple) {
        var entries = new ArrayList<Entry>();
        if (couple.dam() != null) {
            entries.add(entry(words.dam(), couple.dam()));
        }
        for (int sire : couple.sires()) {
            entries.add(entry(couple.sireCertain() ? words.sire() : words.possibleSire(), sire));
        }
        return entries;
    }
}
