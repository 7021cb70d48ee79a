package org.demebook.protocol;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.demebook.protocol.Statement.AncestryTold;

/**
 * Which parents have to be set aside, since with them an animal would be its own ancestor: those of every animal that lies in a
 * circle with one of them. Nobody is chosen as the wrong one; so it is the same on every node, whatever came first.
 *
 * <p>Strongly connected components by Tarjan (1972), SIAM J. Comput. 1: 146–160. O(animals + parents).
 */
final class Circles {
    private final Map<AnimalId, List<AnimalId>> parents;
    private final Map<AnimalId, Integer> index = new HashMap<>();
    private final Map<AnimalId, Integer> low = new HashMap<>();
    private final ArrayDeque<AnimalId> stack = new ArrayDeque<>();
    private final Set<AnimalId> onStack = new HashSet<>();
    private final Map<AnimalId, Integer> component = new HashMap<>();
    private int components;

    private record Step(AnimalId animal, Iterator<AnimalId> parents) {}

    private Circles(Map<AnimalId, List<AnimalId>> parents) {
        this.parents = parents;
    }

    /** @param sameAs animals for which another stands */
    static SortedSet<AnimalId> in(SortedMap<AnimalId, AncestryTold> ancestry, Map<AnimalId, AnimalId> sameAs) {
        var parents = new TreeMap<AnimalId, List<AnimalId>>();
        ancestry.forEach((animal, told) -> {
            var own = parents.computeIfAbsent(sameAs.getOrDefault(animal, animal), id -> new ArrayList<>());
            of(told).forEach(parent -> own.add(sameAs.getOrDefault(parent, parent)));
        });
        var circles = new Circles(parents);
        parents.keySet().forEach(circles::visit);
        var found = new TreeSet<AnimalId>();
        ancestry.forEach((animal, told) -> {
            var self = sameAs.getOrDefault(animal, animal);
            for (var parent : of(told)) {
                var other = sameAs.getOrDefault(parent, parent);
                if (self.equals(other) || circles.component.get(self).equals(circles.component.get(other))) {
                    found.add(animal);
                }
            }
        });
        return found;
    }

    private static List<AnimalId> of(AncestryTold told) {
        var parents = new ArrayList<AnimalId>();
        told.dam().ifPresent(parents::add);
        told.sires().forEach(share -> parents.add(share.sire()));
        return parents;
    }

    /** Without recursion: a pedigree may be deep. */
    private void visit(AnimalId start) {
        if (index.containsKey(start)) {
            return;
        }
        var steps = new ArrayDeque<Step>();
        enter(start, steps);
        while (!steps.isEmpty()) {
            var step = steps.peek();
            if (step.parents.hasNext()) {
                var parent = step.parents.next();
                if (!index.containsKey(parent)) {
                    enter(parent, steps);
                } else if (onStack.contains(parent)) {
                    low.merge(step.animal, index.get(parent), Math::min);
                }
            } else {
                steps.pop();
                leave(step.animal);
                if (!steps.isEmpty()) {
                    low.merge(steps.peek().animal, low.get(step.animal), Math::min);
                }
            }
        }
    }

    private void enter(AnimalId animal, ArrayDeque<Step> steps) {
        index.put(animal, index.size());
        low.put(animal, index.get(animal));
        stack.push(animal);
        onStack.add(animal);
        steps.push(new Step(animal, parents.getOrDefault(animal, List.of()).iterator()));
    }

    private void leave(AnimalId animal) {
        if (low.get(animal).equals(index.get(animal))) {
            AnimalId member;
            do {
                member = stack.pop();
                onStack.remove(member);
                component.put(member, components);
            } while (!member.equals(animal));
            components++;
        }
    }
}
