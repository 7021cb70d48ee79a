package org.demebook.sheet;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Puts the new animals of a sheet in an order in which parents stand before their young; tells of every animal that is
 * its own ancestor. Time and memory grow with the number of animals.
 */
final class FamilyOrder {
    private FamilyOrder() {}

    /** The animals, parents first; those that are in or below a loop are left out. */
    static List<SheetAnimal> of(List<SheetAnimal> animals, Findings findings) {
        Map<SheetAnimal, Integer> parentsToCome = new HashMap<>();
        Map<SheetAnimal, List<SheetAnimal>> young = new HashMap<>();
        var ready = new ArrayDeque<SheetAnimal>();
        for (var animal : animals) {
            var parents = new HashSet<>(animal.newParents());
            parents.forEach(parent ->
                    young.computeIfAbsent(parent, any -> new ArrayList<>()).add(animal));
            if (parents.isEmpty()) {
                ready.add(animal);
            } else {
                parentsToCome.put(animal, parents.size());
            }
        }
        var ordered = new ArrayList<SheetAnimal>(animals.size());
        while (!ready.isEmpty()) {
            var next = ready.remove();
            ordered.add(next);
            for (var each : young.getOrDefault(next, List.of())) {
                if (parentsToCome.merge(each, -1, Integer::sum) == 0) {
                    parentsToCome.remove(each);
                    ready.add(each);
                }
            }
        }
        tellLoops(animals, parentsToCome.keySet(), findings);
        return ordered;
    }

    private static void tellLoops(List<SheetAnimal> animals, Set<SheetAnimal> left, Findings findings) {
        var seen = new HashSet<SheetAnimal>();
        for (var animal : animals) {
            if (!left.contains(animal)) {
                continue;
            }
            // up from parent to parent, among those that are left; each of them has one
            var way = new ArrayList<SheetAnimal>();
            var at = animal;
            while (seen.add(at)) {
                way.add(at);
                at = at.newParents().stream().filter(left::contains).findFirst().orElseThrow();
            }
            int start = way.indexOf(at);
            if (start >= 0) {
                tell(way.subList(start, way.size()), findings);
            }
        }
    }

    private static void tell(List<SheetAnimal> loop, Findings findings) {
        var first = loop.get(0);
        var names = loop.stream().map(animal -> animal.stated.label()).collect(Collectors.joining(" < "));
        var rows = loop.stream().map(animal -> String.valueOf(animal.row())).collect(Collectors.joining(", "));
        findings.error(
                first.row(),
                (String) null,
                null,
                "%s would be its own ancestor: %s < %s (young < parent; rows %s). One of these parents is wrong."
                        .formatted(first.stated.label(), names, first.stated.label(), rows));
    }
}
