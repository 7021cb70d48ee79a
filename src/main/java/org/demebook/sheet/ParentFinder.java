package org.demebook.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.KnownAnimals;
import org.demebook.registry.KnownAnimals.OwnReference;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.sheet.SheetAnimal.Relative;
import org.jspecify.annotations.Nullable;

/**
 * Finds the parents that a row names: by studbook number in the sheet or the register; else by reference, first in the
 * young's own collection, then in the keeper's others.
 */
final class ParentFinder {
    private final String populationCode;
    private final List<UUID> collections;
    private final KnownAnimals known;
    private final Findings findings;
    private final Map<String, SheetAnimal> byNumber = new HashMap<>();
    private final Map<OwnReference, SheetAnimal> byReference = new HashMap<>();

    ParentFinder(
            String populationCode,
            List<UUID> collections,
            List<SheetAnimal> animals,
            KnownAnimals known,
            Findings findings) {
        this.populationCode = populationCode;
        this.collections = collections;
        this.known = known;
        this.findings = findings;
        for (var animal : animals) {
            if (animal.stated.number() != null) {
                byNumber.putIfAbsent(animal.stated.number().toString(), animal);
            }
            if (animal.ownReference() != null) {
                byReference.putIfAbsent(animal.ownReference(), animal);
            }
        }
    }

    /** Sets the parents of an animal; those that do not exist are told. */
    void find(SheetAnimal young) {
        if (young.stated.dam() != null) {
            young.dam = find(young, Column.DAM, young.stated.dam());
        }
        for (var name : names(young.stated.sire())) {
            var sire = find(young, Column.SIRE, name);
            if (sire != null) {
                young.sires.add(sire);
            }
        }
    }

    /** The males that are named in a cell. */
    static List<String> names(@Nullable StatedSire sire) {
        if (sire == null) {
            return List.of();
        }
        if (sire.candidates() != null) {
            return sire.candidates().stream().map(StatedCandidate::animal).toList();
        }
        return sire.animal() == null ? List.of() : List.of(sire.animal());
    }

    private @Nullable Relative find(SheetAnimal young, Column column, String name) {
        var found = new ArrayList<>(numbered(name).map(List::of).orElseGet(() -> called(young, name)));
        if (found.size() == 1) {
            return found.get(0);
        }
        young.parentMissing = true;
        findings.error(
                young.row(),
                column,
                name,
                found.isEmpty()
                        ? nobody(column, name)
                        : "Several of your collections have an animal called %s; write its studbook number."
                                .formatted(name));
        return null;
    }

    private Optional<Relative> numbered(String name) {
        return number(name).flatMap(number -> Optional.ofNullable(byNumber.get(number))
                .map(SheetAnimal::asParent)
                .or(() -> known.numbered(number).map(Relative::of)));
    }

    private List<Relative> called(SheetAnimal young, String name) {
        var inYoungsOwn = called(young.stated.collection(), name);
        if (inYoungsOwn.isPresent()) {
            return List.of(inYoungsOwn.get());
        }
        var found = new LinkedHashMap<UUID, Relative>();
        for (var collection : collections) {
            called(collection, name).ifPresent(animal -> found.put(animal.id(), animal));
        }
        return List.copyOf(found.values());
    }

    private Optional<Relative> called(@Nullable UUID collection, String name) {
        if (collection == null) {
            return Optional.empty();
        }
        var reference = new OwnReference(collection, name);
        return Optional.ofNullable(byReference.get(reference))
                .map(SheetAnimal::asParent)
                .or(() -> known.called(reference).map(Relative::of));
    }

    /** The number that a text is, if it is one of this population. */
    static Optional<String> number(String text, String populationCode) {
        if (!text.regionMatches(true, 0, populationCode, 0, populationCode.length())) {
            return Optional.empty(); // most names are references; spare them the long way
        }
        try {
            return Optional.of(StudbookNumber.parse(text))
                    .filter(number -> number.populationCode().equals(populationCode))
                    .map(StudbookNumber::toString);
        } catch (IllegalArgumentException noNumber) {
            return Optional.empty();
        }
    }

    private Optional<String> number(String text) {
        return number(text, populationCode);
    }

    private String nobody(Column column, String name) {
        var looksLikeNumber = name.matches("(?i)" + populationCode + "-[0-9A-Z]{1,4}-[0-9]+-[0-9A-Z*]");
        if (looksLikeNumber && number(name).isEmpty()) {
            return "%s does not fit its check character: one character was mistyped or two were swapped; read it again."
                    .formatted(name);
        }
        return looksLikeNumber
                ? "No animal of %s has the number %s, here or in the register. Add a row for it, or leave the %s empty if it is unknown."
                        .formatted(populationCode, name, column.header())
                : "No row and none of your registered animals is called %s. Add a row for it, or leave the %s empty if it is unknown."
                        .formatted(name, column.header());
    }
}
