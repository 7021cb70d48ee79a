package org.demebook.rearing;

import static org.demebook.care.CareKind.BEDDING;
import static org.demebook.care.CareKind.FIRST_MEAL;
import static org.demebook.care.CareKind.FIRST_SHED_CHECK;
import static org.demebook.care.CareKind.NEXT_MEAL;
import static org.demebook.care.CareKind.PHOTOGRAPH;
import static org.demebook.care.CareKind.QUARANTINE_END;
import static org.demebook.care.CareKind.RECOVERY_MEAL;
import static org.demebook.care.CareKind.RECOVERY_WEIGHING;
import static org.demebook.care.CareKind.SEPARATION;
import static org.demebook.care.CareKind.TEST_BEFORE_PAIRING;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.demebook.care.CareKind;
import org.demebook.care.CareTask;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Measures;
import org.demebook.diary.CareRecord.Move;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.diary.Diary;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/**
 * Which care tasks follow from what is written down. A task is there until what it asks for is written down. Days after a
 * birth that no figure of the profile gives are common practice, with no source.
 */
final class TaskRules {
    /** An animal in the asker's hands. */
    record InCare(
            UUID id, @Nullable LocalDate born, @Nullable UUID litterId, int photographs, Diary diary) {}

    /** So long meals of a young are reminded of; afterwards it eats as its keeper sees fit. */
    static final int DAYS_OF_A_YOUNG = 365;

    /** So long after a birth somebody still looks after the dam for it. */
    static final int DAYS_OF_RECOVERY = 60;

    private static final int DAYS_TO_BEDDING = 1;
    private static final int DAYS_TO_RECOVERY = 7;
    private static final int DAYS_TO_RECOVERY_AT_MOST = 14;
    private static final int DAYS_FROM_SHED_TO_PHOTOGRAPH = 7;

    private final TaxonProfile profile;
    private final LocalDate today;
    private final List<CareTask> tasks = new ArrayList<>();

    TaskRules(TaxonProfile profile, LocalDate today) {
        this.profile = profile;
        this.today = today;
    }

    List<CareTask> tasks() {
        return List.copyOf(tasks);
    }

    // ── one animal ───────────────────────────────────────────────────────────────────────────────────────────────────

    TaskRules animal(InCare animal) {
        long age = animal.born() == null ? -1 : ChronoUnit.DAYS.between(animal.born(), today);
        if (animal.born() != null && age >= 0) {
            if (age <= profile.rearing().daysOfAgeToLeave()) {
                firstShed(animal, animal.born());
                firstMeal(animal, animal.born());
            }
            if (age <= DAYS_OF_A_YOUNG) {
                nextMeal(animal);
                photograph(animal);
            }
        }
        for (var quarantine : animal.diary().quarantines()) {
            quarantineEnd(animal, quarantine);
        }
        if (animal.born() == null || age >= profile.breeding().daysOfAgeToBreed()) {
            CountedTest.of(animal.diary(), today).forEach(test -> test(animal, test));
        }
        return this;
    }

    private void firstShed(InCare animal, LocalDate born) {
        var rearing = profile.rearing();
        if (animal.diary().sheds().isEmpty()) {
            add(
                    "first-shed:" + animal.id(),
                    FIRST_SHED_CHECK,
                    animal.id(),
                    null,
                    born.plusDays(rearing.daysToFirstShedAtMost()),
                    born.plusDays(rearing.daysToFirstShedAtLeast()),
                    born.plusDays(rearing.daysToFirstShedLate()),
                    "Look for the first shed",
                    "Born on %s; young usually shed first at %d to %d days. Without a shed at %d days, see a reptile veterinarian."
                            .formatted(
                                    born,
                                    rearing.daysToFirstShedAtLeast(),
                                    rearing.daysToFirstShedAtMost(),
                                    rearing.daysToFirstShedLate()));
        }
    }

    private void firstMeal(InCare animal, LocalDate born) {
        var rearing = profile.rearing();
        if (animal.diary().meals().isEmpty()) {
            var shed = animal.diary().sheds().isEmpty()
                    ? null
                    : animal.diary().sheds().get(0).on();
            var due = later(born.plusDays(rearing.daysToFirstMealAtLeast()), shed);
            add(
                    "first-meal:" + animal.id(),
                    FIRST_MEAL,
                    animal.id(),
                    null,
                    due,
                    due,
                    later(born.plusDays(rearing.daysToFirstMealAtMost()), shed),
                    "Offer the first meal",
                    "Born on %s, %s; young feed first after their first shed, at %d to %d days."
                            .formatted(
                                    born,
                                    shed == null ? "no shed written down yet" : "shed on " + shed,
                                    rearing.daysToFirstMealAtLeast(),
                                    rearing.daysToFirstMealAtMost()));
        }
    }

    private void nextMeal(InCare animal) {
        animal.diary().lastMeal().ifPresent(last -> {
            var own = animal.diary().daysBetweenMeals();
            int days = own.orElse(profile.rearing().daysBetweenMeals());
            add(
                    "next-meal:%s:%s".formatted(animal.id(), last.on()),
                    NEXT_MEAL,
                    animal.id(),
                    null,
                    last.on().plusDays(days),
                    null,
                    null,
                    "Offer a meal",
                    "The last was offered on %s; %s %d days."
                            .formatted(
                                    last.on(),
                                    own.isPresent() ? "it is fed about every" : "a young is offered one every",
                                    days));
        });
    }

    private void photograph(InCare animal) {
        var sheds = animal.diary().sheds();
        if (animal.photographs() == 0 && !sheds.isEmpty()) {
            var shed = sheds.get(0).on();
            add(
                    "photograph:" + animal.id(),
                    PHOTOGRAPH,
                    animal.id(),
                    null,
                    shed.plusDays(DAYS_FROM_SHED_TO_PHOTOGRAPH),
                    shed,
                    null,
                    "Photograph it",
                    "It shed first on %s, and its pattern is clearest within %d days."
                            .formatted(shed, DAYS_FROM_SHED_TO_PHOTOGRAPH));
        }
    }

    private void quarantineEnd(InCare animal, Quarantine quarantine) {
        var planned = quarantine.until();
        var until = planned == null ? quarantine.from().plusDays(profile.daysOfQuarantine()) : planned;
        add(
                "quarantine-end:%s:%s".formatted(animal.id(), quarantine.from()),
                QUARANTINE_END,
                animal.id(),
                null,
                until,
                null,
                null,
                "End the quarantine, or prolong it",
                planned == null
                        ? "In quarantine since %s; %d days are usual here."
                                .formatted(quarantine.from(), profile.daysOfQuarantine())
                        : "In quarantine since %s, planned until %s.".formatted(quarantine.from(), planned));
    }

    private void test(InCare animal, CountedTest test) {
        if (test.result() != HealthTest.Result.POSITIVE) {
            add(
                    "test:%s:%s:%s".formatted(animal.id(), slug(test.agent()), test.sampledOn()),
                    TEST_BEFORE_PAIRING,
                    animal.id(),
                    null,
                    test.countsUntil(),
                    null,
                    null,
                    "Test again before a pairing: " + test.agent(),
                    "The last sample is of %s and counts until %s.".formatted(test.sampledOn(), test.countsUntil()));
        }
    }

    private static String slug(String agent) {
        var slug = CountedTest.key(agent).replaceAll("[^a-z0-9]+", "-");
        return slug.substring(0, Math.min(60, slug.length()));
    }

    // ── a litter, and its dam ────────────────────────────────────────────────────────────────────────────────────────

    /** @param young those of the litter that live with the asker */
    TaskRules litter(UUID litterId, LocalDate born, List<InCare> young) {
        long age = ChronoUnit.DAYS.between(born, today);
        var rearing = profile.rearing();
        if (age < 0 || age > rearing.daysOfAgeToLeave()) {
            return this;
        }
        add(
                "bedding:" + litterId,
                BEDDING,
                null,
                litterId,
                born.plusDays(DAYS_TO_BEDDING),
                null,
                null,
                "Change the bedding of the young",
                "Born on %s; the bedding is changed the day after a birth.".formatted(born));
        if (!young.stream().allMatch(one -> one.diary().has(record -> record instanceof Move))) {
            add(
                    "separate:" + litterId,
                    SEPARATION,
                    null,
                    litterId,
                    born.plusDays(rearing.daysToFirstMealAtLeast()),
                    born.plusDays(rearing.daysToFirstShedAtLeast()),
                    born.plusDays(rearing.daysToFirstMealAtMost()),
                    "Put the young into tubs of their own",
                    "Born on %s; young live apart before they are fed, from %d days on."
                            .formatted(born, rearing.daysToFirstMealAtLeast()));
        }
        return this;
    }

    /** @param diary of the dam, who lives with the asker */
    TaskRules dam(UUID damId, UUID litterId, LocalDate born, Diary diary) {
        long since = ChronoUnit.DAYS.between(born, today);
        if (since < 0 || since > DAYS_OF_RECOVERY) {
            return this;
        }
        if (!diary.has(record -> record instanceof Meal && record.on().isAfter(born))) {
            add(
                    "recovery-meal:" + litterId,
                    RECOVERY_MEAL,
                    damId,
                    litterId,
                    born.plusDays(DAYS_TO_RECOVERY),
                    born.plusDays(DAYS_TO_RECOVERY),
                    born.plusDays(DAYS_TO_RECOVERY_AT_MOST),
                    "Offer the dam a small meal",
                    "She gave birth on %s; dams are fed again %d to %d days later."
                            .formatted(born, DAYS_TO_RECOVERY, DAYS_TO_RECOVERY_AT_MOST));
        }
        if (!diary.has(record -> record instanceof Measures measures
                && measures.mass() != null
                && !record.on().isBefore(born))) {
            add(
                    "recovery-weighing:" + litterId,
                    RECOVERY_WEIGHING,
                    damId,
                    litterId,
                    born.plusDays(DAYS_TO_RECOVERY_AT_MOST),
                    born.plusDays(DAYS_TO_RECOVERY),
                    null,
                    "Weigh the dam",
                    "She gave birth on %s; her mass now says whether she may breed again.".formatted(born));
        }
        return this;
    }

    private static LocalDate later(LocalDate day, @Nullable LocalDate other) {
        return other != null && other.isAfter(day) ? other : day;
    }

    private void add(
            String key,
            CareKind kind,
            @Nullable UUID animalId,
            @Nullable UUID litterId,
            LocalDate dueOn,
            @Nullable LocalDate fromOn,
            @Nullable LocalDate untilOn,
            String what,
            String why) {
        tasks.add(new CareTask(key, kind, animalId, litterId, dueOn, fromOn, untilOn, what, why));
    }
}
