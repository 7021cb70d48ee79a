package org.demebook.litter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.gestation.Grade;
import org.demebook.keeper.Standing;
import org.demebook.litter.BirthReading.LitterAtBirth;
import org.demebook.notation.RoughDate;
import org.demebook.problem.Rule;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.Newborns.Neonate;
import org.demebook.registry.Newborns.Parentage;
import org.demebook.registry.Populations;
import org.demebook.registry.Sire;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/** Holds a litter against what is known of its dam and of the males that she met; when it is registered and ever after. */
@ApplicationScoped
class LitterChecks {
    @Inject
    Animals animals;

    @Inject
    Populations populations;

    @Inject
    BreedingRecords breeding;

    @Inject
    LitterRules rules;

    @Inject
    @Any
    Instance<BirthReading> readings;

    /** The sire as it is stated, or as the males that she met tell it. */
    @Nullable
    StatedSire sire(Standing by, Custody dam, NewLitter litter, List<Breach> breaches) {
        var stated = litter.sire();
        if (stated == null || !stated.kind().equals(WorkedOutSire.KIND)) {
            return stated;
        }
        var mates = breeding.mates(by.populationId(), dam.id(), litter.born());
        var numbers = animals.numbers(
                by.populationId(), mates.stream().map(Mate::maleId).collect(Collectors.toSet()));
        var workedOut = WorkedOutSire.of(dam.number(), mates, numbers, Boolean.TRUE.equals(stated.wholeLitter()));
        breaches.addAll(workedOut.findings());
        return workedOut.sire();
    }

    /** A named sire that she met last so long before that it is rare is warned of, and doubtful unless it is said not. */
    Parentage lastMet(
            Standing by,
            Custody dam,
            @Nullable StatedSire stated,
            RoughDate born,
            Parentage parentage,
            List<Breach> breaches) {
        if (stated == null
                || !(parentage.sire() instanceof Sire.Known known)
                || breaches.stream().anyMatch(breach -> breach.finding().rule() == Rule.STORED_SPERM)) {
            return parentage;
        }
        var longAgo = breeding.mates(by.populationId(), dam.id(), born).stream()
                .filter(mate -> mate.maleId().equals(known.sireId()))
                .filter(mate -> mate.grade() == Grade.RARE || mate.grade() == Grade.BEYOND)
                .findFirst();
        if (longAgo.isEmpty()) {
            return parentage;
        }
        var sire = animals.custody(by.populationId(), known.sireId()).number();
        breaches.add(LitterRules.lastMetLongAgo(sire, dam.number(), longAgo.get()));
        return stated.doubtful() == null ? parentage.doubting() : parentage;
    }

    /** What its counts and sexes tell, beside the males that she met. */
    List<Breach> read(Standing by, UUID id, Custody dam, RoughDate born, Outcome outcome, List<Neonate> neonates) {
        var lastMetOn = breeding.mates(by.populationId(), dam.id(), born).stream()
                .map(Mate::lastMetOn)
                .max(Comparator.naturalOrder())
                .orElse(null);
        var sexes = neonates.stream().map(Neonate::sex).toList();
        var atBirth = new LitterAtBirth(id, outcome, sexes, born.earliest(), lastMetOn);
        return readings.stream()
                .flatMap(room -> room.check(by, atBirth).stream())
                .toList();
    }

    /** Its days and its size, beside the other litters of its dam and what is recorded of her. */
    void check(
            Standing by, UUID id, Custody held, Custody dam, RoughDate born, Outcome outcome, List<Breach> breaches) {
        if (held.merged()) {
            breaches.add(Notice.of(
                    "dam",
                    held.number(),
                    "%s stands for %s; the litter is written down for %s."
                            .formatted(dam.number(), held.number(), dam.number())));
        }
        var damIds = animals.recordsOf(by.populationId(), dam.id());
        breaches.addAll(rules.check(
                by, id, dam, damIds, born, outcome, populations.get(by).profile()));
        breaches.addAll(breeding.check(by, dam, born));
    }
}
