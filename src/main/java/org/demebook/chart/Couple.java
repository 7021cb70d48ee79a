package org.demebook.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.demebook.chart.Figure.SireLink;
import org.jspecify.annotations.Nullable;

/**
 * A dam and a sire, or one of them alone, or a dam and all that may be the sire: with their young.
 *
 * @param dam null: none in the chart
 * @param sires the sire, or those it may be, in the order of the figures
 * @param sireCertain false: each of the sires is a candidate
 * @param related for each of the sires, whether the dam is its relation
 */
record Couple(
        @Nullable Integer dam, List<Integer> sires, boolean sireCertain, List<Boolean> related, List<Integer> young) {

    /** The lines of both parents are double; of candidates, each has its own. */
    boolean allRelated() {
        return related.stream().allMatch(it -> it) && !related.isEmpty();
    }

    List<Integer> parents() {
        var parents = new ArrayList<>(sires);
        if (dam != null) {
            parents.add(dam);
        }
        return parents;
    }

    /**
     * The couples of these figures, parents and young given by their place in the list.
     *
     * @throws IllegalArgumentException if a key occurs twice, a parent is not among the figures, or is named twice for one young
     */
    static List<Couple> of(List<Figure> figures) {
        var places = places(figures);
        var couples = new LinkedHashMap<Bond, Couple>();
        for (int young = 0; young < figures.size(); young++) {
            var figure = figures.get(young);
            if (figure.dam() == null && figure.sires().isEmpty()) {
                continue;
            }
            var dam = figure.dam() == null ? null : place(figure, figure.dam(), places);
            var links = figure.sires().stream()
                    .sorted(Comparator.comparing((SireLink link) -> place(figure, link.key(), places)))
                    .toList();
            var sires = links.stream()
                    .map(link -> place(figure, link.key(), places))
                    .toList();
            if (sires.stream().distinct().count() < sires.size() || (dam != null && sires.contains(dam))) {
                throw new IllegalArgumentException("A parent of %s is named twice".formatted(figure.key()));
            }
            var related = links.stream().map(SireLink::relatedToDam).toList();
            couples.computeIfAbsent(
                            new Bond(dam, sires, figure.sireCertain(), related),
                            bond -> new Couple(
                                    bond.dam(), bond.sires(), bond.sireCertain(), bond.related(), new ArrayList<>()))
                    .young()
                    .add(young);
        }
        return List.copyOf(couples.values());
    }

    private record Bond(@Nullable Integer dam, List<Integer> sires, boolean sireCertain, List<Boolean> related) {}

    private static Map<String, Integer> places(List<Figure> figures) {
        var places = new LinkedHashMap<String, Integer>();
        for (int place = 0; place < figures.size(); place++) {
            if (places.put(figures.get(place).key(), place) != null) {
                throw new IllegalArgumentException(
                        "%s is in the chart twice".formatted(figures.get(place).key()));
            }
        }
        return places;
    }

    private static int place(Figure young, String parent, Map<String, Integer> places) {
        var place = places.get(parent);
        if (place == null) {
            throw new IllegalArgumentException(
                    "%s, a parent of %s, is not in the chart".formatted(parent, young.key()));
        }
        return place;
    }
}
