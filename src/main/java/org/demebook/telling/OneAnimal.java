package org.demebook.telling;

import static org.demebook.problem.ProblemType.CLAIM_NOT_POSSIBLE;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.notation.Sex;
import org.demebook.problem.Refusal;
import org.demebook.registry.Elsewhere;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;

/**
 * Whether a record of this register and an animal that another node registered can be one, by the rules for two records here
 * ({@code registry.SameAnimalClaims}): of what the asker sees they are told what speaks against it. What they do not see counts in one
 * thing alone, that neither descends from the other.
 */
final class OneAnimal {
    private final Map<UUID, PedigreeRow> rows = new HashMap<>();
    private final Map<UUID, Elsewhere.Descent> arrived;
    private final Lens lens;

    /** @param here every record of the register. O(population) */
    OneAnimal(List<PedigreeRow> here, Elsewhere elsewhere, Lens lens) {
        here.forEach(row -> rows.put(row.id(), row));
        elsewhere.animals().forEach(row -> rows.putIfAbsent(row.id(), row));
        this.arrived = elsewhere.arrived();
        this.lens = lens;
    }

    /**
     * Refuses with CLAIM_NOT_POSSIBLE.
     *
     * @param record of this register
     * @param other the row of the other one; nothing may be told of it
     * @param named how the asker names it
     */
    void require(UUID record, UUID other, String named) {
        var one = rows.get(record);
        var reasons = new ArrayList<String>();
        boolean seen = Optional.ofNullable(rows.get(other))
                .filter(row -> OtherAnimals.shows(lens, row, FieldGroup.PARENTAGE))
                .isPresent();
        Optional.ofNullable(rows.get(other))
                .filter(row -> OtherAnimals.shows(lens, row, FieldGroup.IDENTITY))
                .ifPresent(row -> compare(one, row, seen, reasons));
        boolean loops = descends(one.id(), other);
        if (loops && seen) {
            reasons.add("one descends from the other");
        }
        if (loops && reasons.isEmpty()) {
            throw new Refusal(
                    CLAIM_NOT_POSSIBLE,
                    "%s and %s cannot be one animal: what is recorded of them does not agree, and not all of it is shown to you. Talk with the keeper of the other."
                            .formatted(one.number(), named));
        }
        if (!reasons.isEmpty()) {
            throw new Refusal(
                    CLAIM_NOT_POSSIBLE,
                    "%s and %s cannot be one animal: %s.".formatted(one.number(), named, String.join("; ", reasons)));
        }
    }

    private void compare(PedigreeRow one, PedigreeRow other, boolean withParents, List<String> reasons) {
        if (one.sex() != Sex.UNKNOWN && other.sex() != Sex.UNKNOWN && one.sex() != other.sex()) {
            reasons.add("%s is %s, %s is %s"
                    .formatted(
                            one.number(),
                            one.sex().word(),
                            other.number(),
                            other.sex().word()));
        }
        if (surelyBefore(one, other) || surelyBefore(other, one)) {
            reasons.add(
                    "%s was born on %s, %s on %s".formatted(one.number(), one.born(), other.number(), other.born()));
        }
        if (withParents) {
            addIfDifferent("dam", one.damId(), other.damId(), reasons);
            addIfDifferent("sire", sire(one), sire(other), reasons);
        }
    }

    private static boolean surelyBefore(PedigreeRow one, PedigreeRow other) {
        return one.bornLatest() != null
                && other.bornEarliest() != null
                && one.bornLatest().isBefore(other.bornEarliest());
    }

    private static @Nullable UUID sire(PedigreeRow row) {
        return row.sire() instanceof Sire.Known known ? known.sireId() : null;
    }

    private void addIfDifferent(String parent, @Nullable UUID one, @Nullable UUID other, List<String> reasons) {
        if (one == null || other == null || canonical(one).equals(canonical(other))) {
            return;
        }
        var its = rows.get(one);
        var others = rows.get(other);
        if (its != null && others != null && !others.isNameless()) {
            reasons.add("their %ss are %s and %s, which would have to be one animal first"
                    .formatted(parent, its.number(), others.number()));
        }
    }

    /** Whether, were the two one, an animal would be its own ancestor: candidates count as parents, what is agreed to be one as one. */
    private boolean descends(UUID record, UUID other) {
        var joined = new HashSet<>(List.of(canonical(record), canonical(other)));
        var parents = new HashMap<UUID, Set<UUID>>();
        rows.values().forEach(row -> parentsOf(row)
                .forEach(parent -> parents.computeIfAbsent(canonical(row.id()), any -> new HashSet<>())
                        .add(canonical(parent))));
        var met = new HashSet<UUID>();
        var next = new ArrayDeque<UUID>(joined);
        while (!next.isEmpty()) {
            for (var parent : parents.getOrDefault(next.remove(), Set.of())) {
                if (joined.contains(parent)) {
                    return true;
                }
                if (met.add(parent)) {
                    next.add(parent);
                }
            }
        }
        return false;
    }

    private Stream<UUID> parentsOf(PedigreeRow row) {
        var told =
                Optional.ofNullable(arrived.get(row.id())).map(row::descending).orElse(row);
        return Stream.concat(Stream.ofNullable(told.damId()), told.sire().animalIds().stream());
    }

    private UUID canonical(UUID id) {
        var met = new HashSet<UUID>();
        var one = id;
        while (met.add(one) && rows.containsKey(one) && rows.get(one).sameAsId() != null) {
            one = rows.get(one).sameAsId();
        }
        return one;
    }
}
