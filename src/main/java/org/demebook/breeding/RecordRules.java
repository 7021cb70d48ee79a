package org.demebook.breeding;

import static org.demebook.problem.ProblemType.ANIMAL_MERGED;
import static org.demebook.problem.ProblemType.DAM_NOT_FEMALE;
import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.SIRE_NOT_MALE;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.problem.Refusal;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;

/** What every record of this room keeps to: the right animal of the right sex, alive on a day that has come. */
@ApplicationScoped
class RecordRules {
    @Inject
    Clock clock;

    LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    Custody unmerged(Custody animal) {
        if (animal.merged()) {
            throw new Refusal(
                    ANIMAL_MERGED,
                    "%s was found to be an animal with another number; open it to see which, and use that one."
                            .formatted(animal.number()));
        }
        return animal;
    }

    /** An unknown sex is no contradiction. */
    void requireSex(Custody animal, Sex sex, String field, List<Breach> breaches) {
        if (animal.sex() != sex && animal.sex() != Sex.UNKNOWN) {
            breaches.add(Breach.error(
                    sex == Sex.FEMALE ? DAM_NOT_FEMALE : SIRE_NOT_MALE,
                    field,
                    animal.number(),
                    "%s is registered as %s; take another animal, or correct the sex first."
                            .formatted(animal.number(), animal.sex().word())));
        }
    }

    void checkDay(Custody animal, String field, LocalDate day, List<Breach> breaches) {
        // a day of grace: it may be tomorrow already where the keeper lives
        if (day.isAfter(today().plusDays(1))) {
            breaches.add(Breach.error(
                    DATE_IN_FUTURE, field, day, "%s has not come yet; record it when it has happened.".formatted(day)));
        }
        if (animal.born() != null && animal.born().surelyAfter(RoughDate.of(day))) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    field,
                    day,
                    "%s was born on %s, after %s; check the year.".formatted(animal.number(), animal.born(), day)));
        }
        if (animal.died() != null && animal.died().surelyBefore(day)) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    field,
                    day,
                    "%s died on %s, before %s; correct one of the two."
                            .formatted(animal.number(), animal.died(), day)));
        }
    }
}
