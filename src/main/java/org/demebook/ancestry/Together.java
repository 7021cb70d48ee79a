package org.demebook.ancestry;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.Elsewhere;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;

/**
 * The records here and what other nodes told, as one population. What is told never makes a record here fail: a parent that nobody
 * knows is unknown; one that stands for a record that nobody knows stands for itself; where what is told would make an animal its own
 * ancestor, all parentages of the circle that were told are set aside, whatever came first. O(population).
 */
final class Together {
    private final Map<UUID, PedigreeRow> byId = new HashMap<>();

    private Together(Collection<PedigreeRow> rows) {
        rows.forEach(row -> byId.putIfAbsent(row.id(), row));
    }

    /** In the order of the numbers; the very same where nothing is told. */
    static List<PedigreeRow> of(List<PedigreeRow> here, Elsewhere elsewhere) {
        if (elsewhere.isNothing()) {
            return here;
        }
        var all = new ArrayList<>(here);
        all.addAll(elsewhere.animals());
        var together = new Together(all);
        together.standForKnownOnes(elsewhere.animals());
        for (var row : List.copyOf(together.byId.values())) {
            together.byId.put(row.id(), told(row, elsewhere, together.byId::containsKey));
        }
        together.setCirclesAside(elsewhere);
        return together.byId.values().stream()
                .map(row -> Map.entry(StudbookNumber.parse(row.number()), row))
                .sorted(Map.Entry.<StudbookNumber, PedigreeRow>comparingByKey()
                        .thenComparing(entry -> entry.getValue().id()))
                .map(Map.Entry::getValue)
                .toList();
    }

    /** The records that were touched, with what is told of them, beside a population that was put together before. */
    static List<PedigreeRow> touched(List<PedigreeRow> touched, Elsewhere elsewhere, Records before) {
        return touched.stream().map(row -> told(row, elsewhere, before::knows)).toList();
    }

    private static PedigreeRow told(PedigreeRow row, Elsewhere elsewhere, Predicate<UUID> known) {
        var descent = elsewhere.arrived().get(row.id());
        if (descent != null) {
            return row.descending(new Elsewhere.Descent(
                    knownDam(descent.damId(), known),
                    knownSire(descent.sire(), known),
                    descent.origin(),
                    descent.unshown()));
        }
        if (row.node() == null) {
            return row;
        }
        var twin = row.twinOfId();
        return (twin == null || known.test(twin) ? row : row.withoutTwin())
                .withoutParents()
                .descending(new Elsewhere.Descent(
                        knownDam(row.damId(), known),
                        knownSire(row.sire(), known),
                        row.origin(),
                        row.parentageUnshown()));
    }

    private static @Nullable UUID knownDam(@Nullable UUID damId, Predicate<UUID> known) {
        return damId != null && known.test(damId) ? damId : null;
    }

    private static Sire knownSire(Sire sire, Predicate<UUID> known) {
        if (sire instanceof Sire.Candidates several) {
            var still = several.candidates().stream()
                    .filter(candidate -> known.test(candidate.sireId()))
                    .toList();
            return still.isEmpty() ? new Sire.Unknown() : new Sire.Candidates(still, several.drawId());
        }
        return sire instanceof Sire.Known one && !known.test(one.sireId()) ? new Sire.Unknown() : sire;
    }

    private void standForKnownOnes(Collection<PedigreeRow> animals) {
        for (var animal : animals) {
            var met = new HashSet<UUID>();
            UUID id = animal.id();
            while (id != null && met.add(id) && byId.containsKey(id)) {
                id = byId.get(id).sameAsId();
            }
            if (id != null) {
                byId.put(animal.id(), byId.get(animal.id()).alone());
            }
        }
    }

    private void setCirclesAside(Elsewhere elsewhere) {
        for (var id : circles()) {
            var row = byId.get(id);
            if (row.node() != null || elsewhere.arrived().containsKey(id)) {
                byId.put(id, row.withoutParentage());
            }
        }
    }

    /** Records on a circle, or between two: what is left when those without ancestors, and those without young, have gone. */
    private Set<UUID> circles() {
        var parents = new HashMap<UUID, Set<UUID>>();
        var young = new HashMap<UUID, Set<UUID>>();
        for (var row : byId.values()) {
            var one = canonical(row.id());
            parents.computeIfAbsent(one, id -> new HashSet<>());
            young.computeIfAbsent(one, id -> new HashSet<>());
            parentsOf(row).map(this::canonical).forEach(parent -> {
                parents.get(one).add(parent);
                young.computeIfAbsent(parent, id -> new HashSet<>()).add(one);
            });
        }
        var left = new HashSet<>(parents.keySet());
        peel(left, parents, young);
        peel(left, young, parents);
        var records = new HashSet<UUID>();
        if (!left.isEmpty()) {
            byId.keySet().stream().filter(id -> left.contains(canonical(id))).forEach(records::add);
        }
        return records;
    }

    /** Takes out, again and again, those that have none of the one kind left. */
    private static void peel(Set<UUID> left, Map<UUID, Set<UUID>> before, Map<UUID, Set<UUID>> after) {
        var open = new HashMap<UUID, Integer>();
        left.forEach(id -> open.put(
                id, (int) before.get(id).stream().filter(left::contains).count()));
        var free = new ArrayDeque<UUID>();
        open.forEach((id, count) -> {
            if (count == 0) {
                free.add(id);
            }
        });
        while (!free.isEmpty()) {
            var id = free.remove();
            left.remove(id);
            for (var next : after.get(id)) {
                if (open.containsKey(next) && open.merge(next, -1, Integer::sum) == 0) {
                    free.add(next);
                }
            }
        }
    }

    private static Stream<UUID> parentsOf(PedigreeRow row) {
        return Stream.concat(Stream.ofNullable(row.damId()), row.sire().animalIds().stream());
    }

    private UUID canonical(UUID id) {
        var one = id;
        for (var row = byId.get(one); row.sameAsId() != null; row = byId.get(one)) {
            one = row.sameAsId();
        }
        return one;
    }
}
