package org.demebook.census;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.demebook.census.Preparation.Earlier;
import org.jspecify.annotations.Nullable;

/**
 * Where animals are counted, in a release and in all before it, so that what changed between two of them can be told.
 *
 * <p>A release that had no table of regions told nothing of them: its animals are taken to have been where the next release
 * that had one found them, or where they are now. That their keepers stated it since is no change of the animals. Where no
 * release has such a table, this one included, regions are not looked at.
 */
final class Places {
    private final Set<String> names;
    private final List<Earlier> earlier;

    /**
     * @param fixed regions that the association fixed
     * @param headings of the release that is being prepared
     * @param before all releases before, the earliest first
     */
    Places(List<CountedAnimal> animals, List<String> fixed, List<Heading> headings, List<Earlier> before) {
        if (hasRegions(headings) || before.stream().anyMatch(Places::hasRegions)) {
            earlier = located(animals, before);
            names = names(animals, fixed, earlier);
        } else {
            earlier = before;
            names = Set.of();
        }
    }

    /** All regions that anything is known of. */
    static Set<String> names(List<CountedAnimal> animals, List<String> fixed, List<Earlier> earlier) {
        var names = new LinkedHashSet<>(fixed);
        animals.forEach(animal -> names.add(animal.place()));
        for (var release : earlier) {
            release.headings().stream().filter(Heading::isRegion).forEach(heading -> names.add(heading.region()));
            release.animals().forEach(animal -> names.add(animal.place()));
        }
        names.add(Heading.NOT_STATED);
        return names;
    }

    private static boolean hasRegions(Earlier release) {
        return hasRegions(release.headings());
    }

    private static boolean hasRegions(List<Heading> headings) {
        return headings.stream().anyMatch(Heading::isRegion);
    }

    private static List<Earlier> located(List<CountedAnimal> animals, List<Earlier> before) {
        Map<String, @Nullable String> later = new HashMap<>();
        animals.forEach(animal -> later.put(animal.number(), animal.region()));
        var located = new ArrayList<Earlier>();
        for (int k = before.size() - 1; k >= 0; k--) {
            var release = before.get(k);
            if (hasRegions(release)) {
                release.animals().forEach(animal -> later.put(animal.number(), animal.region()));
                located.add(release);
            } else {
                located.add(new Earlier(
                        release.view(),
                        release.animals().stream()
                                .map(animal -> later.containsKey(animal.number())
                                        ? animal.in(later.get(animal.number()))
                                        : animal)
                                .toList()));
            }
        }
        Collections.reverse(located);
        return located;
    }

    /** The regions that are told apart, {@code not stated} among them; none where regions are not looked at. */
    Set<String> names() {
        return names;
    }

    List<Earlier> earlier() {
        return earlier;
    }
}
