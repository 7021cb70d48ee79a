package org.demebook.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.notation.Transponder;
import org.demebook.problem.Finding;
import org.demebook.problem.Finding.Level;
import org.demebook.problem.LeftAsIs;
import org.demebook.problem.Rule;
import org.demebook.registry.Breach;
import org.demebook.registry.KnownAnimals;
import org.demebook.registry.ParentageRules;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.registry.TransponderRules;
import org.demebook.sheet.Plan.Left;
import org.demebook.sheet.SheetAnimal.Relative;

/** Holds the new animals of a sheet to the rules of the register, and to each other. */
final class SheetRules {
    private final ParentageRules rules;
    private final List<LeftAsIs> leave;
    private final Findings findings;
    private final List<Left> left = new ArrayList<>();

    SheetRules(ParentageRules rules, List<LeftAsIs> leave, Findings findings) {
        this.rules = rules;
        this.leave = leave;
        this.findings = findings;
    }

    List<Left> left() {
        return left;
    }

    void check(SheetAnimal animal) {
        var row = animal.stated;
        rules.dates().check("born", row.born()).forEach(breach -> tell(animal, breach));
        rules.dates().check("died", row.died()).forEach(breach -> tell(animal, breach));
        var dam = animal.dam == null ? null : animal.dam.kin();
        var sires = animal.sires.stream().map(Relative::kin).toList();
        rules.check(animal.kin(), row.originOrUnknown(), dam, sires).forEach(breach -> tell(animal, breach));
        checkSire(animal);
    }

    private void checkSire(SheetAnimal animal) {
        var sire = animal.stated.sire();
        if (sire == null) {
            return;
        }
        if (sire.kind().equals("none")) {
            tell(animal, ParentageRules.checkSireless(animal.stated.dam() != null));
        }
        var candidates = sire.candidates();
        if (candidates != null) {
            ParentageRules.checkCandidates(
                            "sire",
                            animal.sires.stream()
                                    .map(male -> male.kin().label())
                                    .toList(),
                            candidates.stream()
                                    .map(StatedCandidate::probability)
                                    .toList())
                    .forEach(breach -> tell(animal, breach));
            if (Boolean.TRUE.equals(sire.wholeLitter()) && !hasKnownLitter(animal)) {
                findings.warning(
                        animal.row(),
                        Column.SIRE.header(),
                        String.join("|", ParentFinder.names(sire)),
                        "\"one of\" means one and the same male for all young of a dam with the same birth date; this row has no dam or no birth date, so it stands for itself.");
            }
        }
    }

    static boolean hasKnownLitter(SheetAnimal animal) {
        return animal.dam != null && animal.stated.born() != null;
    }

    /** A transponder is carried by one living animal only; one a slip of the hand away is worth a second look. */
    void checkTransponders(List<SheetAnimal> animals, KnownAnimals known) {
        Map<String, SheetAnimal> carriers = new HashMap<>();
        for (var animal : animals) {
            if (animal.kin().died() != null) {
                continue;
            }
            for (var transponder : animal.stated.transponders()) {
                var registered = known.carriers().get(transponder.code());
                if (registered != null && animal.isNew()) {
                    tell(animal, TransponderRules.taken(transponder, registered.number()));
                }
                var other = carriers.putIfAbsent(transponder.code(), animal);
                if (other != null) {
                    tell(animal, TransponderRules.taken(transponder, inRow(other)));
                } else if (animal.isNew()) {
                    checkNeighbours(animal, transponder, carriers, known);
                }
            }
        }
    }

    private void checkNeighbours(
            SheetAnimal animal, Transponder transponder, Map<String, SheetAnimal> carriers, KnownAnimals known) {
        for (var code : transponder.neighbours()) {
            var registered = known.carriers().get(code);
            var other = carriers.get(code);
            if (registered != null && registered.number() != null) {
                tell(animal, TransponderRules.near(transponder, code, registered.number()));
            } else if (other != null && other != animal) {
                tell(animal, TransponderRules.near(transponder, code, inRow(other)));
            }
        }
    }

    private static String inRow(SheetAnimal animal) {
        return "%s in row %d".formatted(animal.stated.label(), animal.row());
    }

    /** Told once, not in every row: a card index often has the year alone. */
    void checkYears(List<SheetAnimal> animals) {
        var rows = animals.stream()
                .filter(animal ->
                        animal.stated.born() != null && animal.stated.born().precision() == RoughDate.Precision.YEAR)
                .toList();
        if (!rows.isEmpty()) {
            findings.tell(
                    null,
                    Finding.of(
                            Level.WARNING,
                            Rule.YEAR_ONLY,
                            Column.BORN.header(),
                            null,
                            "%d rows give the year of birth alone (the first is row %d); every check takes any day of that year. Where a paper has the month or the day, write it."
                                    .formatted(rows.size(), rows.get(0).row()),
                            null));
        }
    }

    /** An animal whose sex nobody wrote down cannot be dam in one row and sire in another. */
    void checkRoles(List<SheetAnimal> animals) {
        Map<UUID, SheetAnimal> young = new HashMap<>();
        for (var animal : animals) {
            if (animal.dam != null && animal.dam.kin().sex() == Sex.UNKNOWN) {
                young.putIfAbsent(animal.dam.id(), animal);
            }
        }
        Set<UUID> told = new HashSet<>();
        for (var animal : animals) {
            for (var sire : animal.sires) {
                var ofDam = young.get(sire.id());
                if (ofDam != null && told.add(sire.id())) {
                    findings.error(
                            animal.row(),
                            Column.SIRE,
                            sire.kin().label(),
                            "%s is given as sire of %s here and as dam of %s in row %d; which of the two is wrong?"
                                    .formatted(
                                            sire.kin().label(),
                                            animal.stated.label(),
                                            ofDam.stated.label(),
                                            ofDam.row()));
                }
            }
        }
    }

    private void tell(SheetAnimal animal, Optional<Breach> breach) {
        breach.ifPresent(present -> tell(animal, present));
    }

    private void tell(SheetAnimal animal, Breach breach) {
        if (breach.isLeftBy(leave)) {
            left.add(new Left(animal.id, breach));
        } else {
            findings.tell(animal.row(), breach.finding());
        }
    }
}
