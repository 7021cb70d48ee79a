package org.demebook.sheet;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.AnimalRegistered;
import org.demebook.registry.Breach;
import org.demebook.registry.IdentifierView;
import org.demebook.registry.Sire;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/**
 * What a checked sheet would do.
 *
 * @param toAdd the new animals in the order of the sheet, which is the order of their numbers
 * @param left what is left as it is
 * @param parentsFirst the same in an order in which they can be recorded
 */
record Plan(Report report, List<SheetAnimal> toAdd, List<SheetAnimal> parentsFirst, List<Left> left) {
    /** What a rule speaks against in an animal, and the import leaves as it is. */
    record Left(UUID animalId, Breach breach) {}

    /** The numbers that animals bring with them. */
    List<StudbookNumber> keptNumbers() {
        return toAdd.stream()
                .map(animal -> animal.stated.number())
                .filter(Objects::nonNull)
                .toList();
    }

    /**
     * The facts to be recorded, parents first.
     *
     * @param fresh as many numbers as there are animals that bring none
     */
    List<AnimalRegistered> facts(List<StudbookNumber> fresh) {
        Iterator<StudbookNumber> next = fresh.iterator();
        Map<SheetAnimal, StudbookNumber> numberOf = new HashMap<>();
        for (var animal : toAdd) {
            numberOf.put(animal, animal.stated.number() != null ? animal.stated.number() : next.next());
        }
        return parentsFirst.stream()
                .map(animal -> fact(animal, numberOf.get(animal)))
                .toList();
    }

    private static AnimalRegistered fact(SheetAnimal animal, StudbookNumber number) {
        var row = animal.stated;
        return new AnimalRegistered(
                animal.id,
                number,
                row.sexOrUnknown(),
                row.born(),
                row.died(),
                row.originOrUnknown(),
                row.source(),
                animal.dam == null ? null : animal.dam.id(),
                sire(animal, row.sire()),
                null,
                false,
                Objects.requireNonNull(row.collection()),
                identifiers(row),
                row.notes(),
                null,
                false,
                row.locality());
    }

    private static List<IdentifierView> identifiers(StatedRow row) {
        var identifiers = new ArrayList<IdentifierView>();
        row.transponders().forEach(code -> identifiers.add(IdentifierView.of(code, code.code())));
        row.marks().forEach(mark -> identifiers.add(new IdentifierView("mark", mark)));
        if (row.reference() != null) {
            identifiers.add(new IdentifierView("own-reference", row.reference()));
        }
        return identifiers;
    }

    private static Sire sire(SheetAnimal animal, @Nullable StatedSire stated) {
        if (stated == null) {
            return new Sire.Unknown();
        }
        return switch (stated.kind()) {
            case "known" -> new Sire.Known(animal.sires.get(0).id(), stated.inDoubt());
            case "candidates" -> candidates(animal, stated);
            default ->
                new Sire.None(
                        Objects.requireNonNull(stated.fusion()),
                        Objects.requireNonNull(stated.secondDivision()).toPlainString());
        };
    }

    private static Sire candidates(SheetAnimal animal, StatedSire stated) {
        var shares = Objects.requireNonNull(stated.candidates());
        var candidates = new ArrayList<Sire.Candidate>();
        for (int i = 0; i < shares.size(); i++) {
            candidates.add(new Sire.Candidate(
                    animal.sires.get(i).id(),
                    shares.get(i).probability().stripTrailingZeros().toPlainString()));
        }
        return new Sire.Candidates(
                candidates, Boolean.TRUE.equals(stated.wholeLitter()) ? draw(animal, candidates) : null);
    }

    /**
     * The draw that all young of a litter share. It follows from the dam, the birth date and the candidates, so that
     * litter mates of a later sheet share it too; an animal of no known litter has one of its own.
     */
    private static UUID draw(SheetAnimal animal, List<Sire.Candidate> candidates) {
        if (animal.dam == null || animal.stated.born() == null) {
            return UUID.nameUUIDFromBytes(("draw " + animal.id).getBytes(StandardCharsets.UTF_8));
        }
        var males = candidates.stream()
                .map(candidate -> candidate.sireId() + ":" + candidate.probability())
                .sorted()
                .collect(Collectors.joining("|"));
        var litter = "draw %s %s %s".formatted(animal.dam.id(), animal.stated.born(), males);
        return UUID.nameUUIDFromBytes(litter.getBytes(StandardCharsets.UTF_8));
    }
}
