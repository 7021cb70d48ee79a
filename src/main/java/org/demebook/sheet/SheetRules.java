package org.demebook.sheet;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.notation.Sex;
import org.demebook.registry.Breach;
import org.demebook.registry.KnownAnimals;
import org.demebook.registry.ParentageRules;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.demebook.sheet.SheetAnimal.Relative;

/** Holds the new animals of a sheet to the rules of the register, and to each other. */
final class SheetRules {
    private final ParentageRules rules;
    private final LocalDate today;
    private final Findings findings;

    SheetRules(ParentageRules rules, LocalDate today, Findings findings) {
        this.rules = rules;
        this.today = today;
        this.findings = findings;
    }

    void check(SheetAnimal animal) {
        var row = animal.stated;
        tell(animal, ParentageRules.checkPast("born", row.born(), today));
        tell(animal, ParentageRules.checkPast("died", row.died(), today));
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

    /** A transponder is carried by one living animal only. */
    void checkTransponders(List<SheetAnimal> animals, KnownAnimals known) {
        Map<String, SheetAnimal> carriers = new HashMap<>();
        for (var animal : animals) {
            for (var transponder : animal.stated.transponders()) {
                var registered = known.carriers().get(transponder.code());
                if (registered != null && animal.isNew()) {
                    findings.error(animal.row(), Column.TRANSPONDERS, transponder, transponder.carriedBy(registered));
                }
                var other = animal.kin().died() != null ? null : carriers.putIfAbsent(transponder.code(), animal);
                if (other != null) {
                    findings.error(
                            animal.row(),
                            Column.TRANSPONDERS,
                            transponder,
                            transponder.carriedBy("%s in row %d".formatted(other.stated.label(), other.row())));
                }
            }
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
        var finding = breach.finding();
        if (breach.type() != null) {
            findings.error(animal.row(), finding.field(), finding.value(), finding.message());
        } else {
            findings.warning(animal.row(), finding.field(), finding.value(), finding.message());
        }
    }
}
