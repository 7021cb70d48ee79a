package org.demebook.web.season;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.demebook.programme.SeasonPlanView.ProposedLitter;
import org.jspecify.annotations.Nullable;

/**
 * Plans side by side: their figures, and every pair that one of them has.
 *
 * @param pairs those that all have first, each with a cell for every plan
 */
public record Beside(List<Column> columns, List<Pair> pairs) {
    /**
     * @param name what it is called here
     * @param link to it; null for the one that the page is about
     */
    public record Column(String name, @Nullable String link, PlanShown plan) {}

    /** @param kept how many young of it each plan keeps; null where it has no such pair */
    public record Pair(String dam, String sire, List<Kept> kept) {
        boolean isEverywhere() {
            return kept.stream().allMatch(Kept::has);
        }
    }

    /** @param young to keep; 0 where the plan has no such pair */
    public record Kept(boolean has, int young) {
        static final Kept NONE = new Kept(false, 0);
    }

    static Beside of(List<Column> columns) {
        Map<String, Pair> pairs = new LinkedHashMap<>();
        for (int place = 0; place < columns.size(); place++) {
            for (var litter : columns.get(place).plan().plan().litters()) {
                pair(pairs, litter, columns.size()).kept().set(place, new Kept(true, litter.keep()));
            }
        }
        var sorted = new ArrayList<>(pairs.values());
        sorted.sort((one, other) -> Boolean.compare(other.isEverywhere(), one.isEverywhere())); // stable
        return new Beside(List.copyOf(columns), sorted);
    }

    private static Pair pair(Map<String, Pair> pairs, ProposedLitter litter, int columns) {
        return pairs.computeIfAbsent(litter.dam() + " " + litter.sire(), both -> {
            var kept = new ArrayList<Kept>();
            for (int place = 0; place < columns; place++) {
                kept.add(Kept.NONE);
            }
            return new Pair(litter.dam(), litter.sire(), kept);
        });
    }
}
