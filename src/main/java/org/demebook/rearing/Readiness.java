package org.demebook.rearing;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.Diary;
import org.demebook.diary.Diary.Weighing;
import org.demebook.notation.Mass;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.taxon.TaxonProfile.Rearing;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * Whether a young may leave: each condition with the reason in words. Common practice of the trade, no source; the figures
 * are those of the population's profile.
 *
 * @param ready every condition is met
 * @param established it has shed, takes its food by itself and has gained: the conditions sheds, meals and mass are met
 */
public record Readiness(boolean ready, boolean established, List<LeavingCondition> conditions) {
    public enum State {
        @JsonProperty("met")
        MET,
        @JsonProperty("not-met")
        NOT_MET,
        /** Too little is written down to tell. */
        @JsonProperty("unknown")
        UNKNOWN
    }

    /**
     * One condition.
     *
     * @param name {@code age}, {@code sheds}, {@code meals}, {@code last-meal}, {@code mass}, {@code health}, {@code sex}
     *     or {@code photograph}
     * @param reason what is known and what is asked for
     */
    public record LeavingCondition(
            @Schema(enumeration = {"age", "sheds", "meals", "last-meal", "mass", "health", "sex", "photograph"})
            String name,

            @Schema(
                    implementation = String.class,
                    enumeration = {"met", "not-met", "unknown"})
            State state,

            String reason) {}

    /**
     * What the register knows of the young.
     *
     * @param photographs how many there are; null when the asker does not see them
     */
    public record Young(
            @Nullable RoughDate born, Sex sex, @Nullable Integer photographs) {}

    private static final Set<String> OF_THE_ESTABLISHED = Set.of("sheds", "meals", "mass");

    /** A mass of the first days is the mass at birth. */
    static final int DAYS_OF_BIRTH_MASS = 7;

    public static Readiness of(Young young, Diary diary, Rearing profile, LocalDate today) {
        var seen = diary.until(today);
        var conditions = List.of(
                age(young.born(), profile, today),
                sheds(seen, profile),
                meals(seen, profile),
                lastMeal(seen, profile, today),
                mass(young.born(), seen),
                health(seen),
                sex(young.sex()),
                photograph(young.photographs()));
        return new Readiness(
                allMet(conditions.stream()),
                allMet(conditions.stream().filter(condition -> OF_THE_ESTABLISHED.contains(condition.name()))),
                conditions);
    }

    /** Those that are not met, or not known to be. */
    public List<LeavingCondition> open() {
        return conditions.stream()
                .filter(condition -> condition.state() != State.MET)
                .toList();
    }

    private static boolean allMet(Stream<LeavingCondition> conditions) {
        return conditions.allMatch(condition -> condition.state() == State.MET);
    }

    private static LeavingCondition age(@Nullable RoughDate born, Rearing profile, LocalDate today) {
        int least = profile.daysOfAgeToLeave();
        if (born == null || born.earliest() == null && born.latest() == null) {
            return unknown("age", "Its birth is not known, and a young leaves at %s.".formatted(days(least)));
        }
        var oldest = born.earliest() == null ? null : ChronoUnit.DAYS.between(born.earliest(), today);
        var youngest = born.latest() == null ? null : ChronoUnit.DAYS.between(born.latest(), today);
        if (youngest != null && youngest >= least) {
            return met("age", "Born on %s, it is %s old; %s are asked for.".formatted(born, days(youngest), least));
        }
        if (oldest != null && oldest < least) {
            return notMet("age", "Born on %s, it is %s old; %s are asked for.".formatted(born, days(oldest), least));
        }
        return unknown(
                "age",
                "Its birth is known as %s only, which leaves open whether it is %s old.".formatted(born, days(least)));
    }

    private static LeavingCondition sheds(Diary diary, Rearing profile) {
        int sheds = diary.sheds().size();
        var reason = sheds == 0
                ? "No shed is written down; %d asked for.".formatted(profile.shedsToLeave())
                : "%d %s written down, the last of %s; %d asked for."
                        .formatted(
                                sheds,
                                sheds == 1 ? "shed is" : "sheds are",
                                diary.sheds().get(sheds - 1).on(),
                                profile.shedsToLeave());
        return of("sheds", sheds >= profile.shedsToLeave(), reason);
    }

    private static LeavingCondition meals(Diary diary, Rearing profile) {
        int least = profile.mealsToLeave();
        var last = diary.lastMeal();
        if (last.isEmpty()) {
            return of(
                    "meals",
                    least == 0,
                    "No meal is written down; %d in a row without help are asked for.".formatted(least));
        }
        int inARow = diary.mealsInARow();
        var asked = "%d in a row are asked for".formatted(least);
        if (inARow > 0) {
            return of(
                    "meals",
                    inARow >= least,
                    "It took its last %d %s without help; %s."
                            .formatted(inARow, inARow == 1 ? "meal" : "meals", asked));
        }
        return of("meals", least == 0, "%s; %s without help.".formatted(lastOnesNotAlone(diary), asked));
    }

    /** In words, the meals at the end that it did not take by itself. */
    private static String lastOnesNotAlone(Diary diary) {
        var meals = diary.meals();
        int first = meals.size();
        while (first > 0 && meals.get(first - 1).outcome() != Meal.Outcome.TAKEN) {
            first--;
        }
        var last = meals.subList(first, meals.size());
        long assisted = last.stream()
                .filter(meal -> meal.outcome() == Meal.Outcome.ASSISTED)
                .count();
        var what = assisted == last.size() ? "assisted" : assisted == 0 ? "refused" : "assisted or refused";
        return last.size() == 1
                ? "Its last meal, of %s, was %s".formatted(last.get(0).on(), what)
                : "Its last %d meals, since %s, were %s"
                        .formatted(last.size(), last.get(0).on(), what);
    }

    private static LeavingCondition lastMeal(Diary diary, Rearing profile, LocalDate today) {
        int least = profile.daysFromMealToLeave();
        var eaten = diary.lastMealEaten();
        if (eaten.isEmpty()) {
            return unknown(
                    "last-meal",
                    "No meal that it ate is written down; %s since the last are asked for.".formatted(days(least)));
        }
        long ago = ChronoUnit.DAYS.between(eaten.get().on(), today);
        return of(
                "last-meal",
                ago >= least,
                "It ate on %s, %s ago; a young travels %s after a meal or later."
                        .formatted(eaten.get().on(), days(ago), days(least)));
    }

    private static LeavingCondition mass(@Nullable RoughDate born, Diary diary) {
        var atBirth = atBirth(born, diary);
        if (atBirth == null) {
            return unknown(
                    "mass",
                    "No mass of its first %d days is written down, so nobody can tell whether it has gained."
                            .formatted(DAYS_OF_BIRTH_MASS));
        }
        var last = diary.lastWeighing().orElseThrow();
        if (!last.on().isAfter(atBirth.on())) {
            return unknown(
                    "mass",
                    "It weighed %s g on %s and was not weighed since; weigh it again."
                            .formatted(Mass.grams(atBirth.milligrams()), atBirth.on()));
        }
        return of(
                "mass",
                last.milligrams() >= atBirth.milligrams(),
                "It weighed %s g on %s, and %s g at birth (%s)."
                        .formatted(
                                Mass.grams(last.milligrams()),
                                last.on(),
                                Mass.grams(atBirth.milligrams()),
                                atBirth.on()));
    }

    /** The first mass of its first days; null when there is none, or its birth is not known to the day. */
    static @Nullable Weighing atBirth(@Nullable RoughDate born, Diary diary) {
        var day = born == null ? null : born.day().orElse(null);
        return day == null
                ? null
                : diary.weighings().stream()
                        .filter(weighing -> !weighing.on().isBefore(day)
                                && ChronoUnit.DAYS.between(day, weighing.on()) <= DAYS_OF_BIRTH_MASS)
                        .findFirst()
                        .orElse(null);
    }

    private static LeavingCondition health(Diary diary) {
        var open = diary.openHealthNotes();
        return open.isEmpty()
                ? met("health", "No health note is open.")
                : notMet(
                        "health",
                        "%d health %s open, the first of %s; a reptile veterinarian should see it before it leaves."
                                .formatted(
                                        open.size(),
                                        open.size() == 1 ? "note is" : "notes are",
                                        open.get(0).on()));
    }

    private static LeavingCondition sex(Sex sex) {
        return sex == Sex.UNKNOWN
                ? unknown("sex", "Its sex is not stated; have it determined, or tell the buyer that it is unsexed.")
                : met("sex", "It is %s.".formatted(sex.word()));
    }

    private static LeavingCondition photograph(@Nullable Integer photographs) {
        if (photographs == null) {
            return unknown("photograph", "Only who holds it sees its photographs.");
        }
        return of(
                "photograph",
                photographs > 0,
                photographs == 0
                        ? "It has no photograph; take one after a shed, from above."
                        : photographs == 1 ? "It has a photograph." : "It has %d photographs.".formatted(photographs));
    }

    private static String days(long days) {
        return days == 1 ? "1 day" : days + " days";
    }

    private static LeavingCondition of(String name, boolean met, String reason) {
        return new LeavingCondition(name, met ? State.MET : State.NOT_MET, reason);
    }

    private static LeavingCondition met(String name, String reason) {
        return of(name, true, reason);
    }

    private static LeavingCondition notMet(String name, String reason) {
        return of(name, false, reason);
    }

    private static LeavingCondition unknown(String name, String reason) {
        return new LeavingCondition(name, State.UNKNOWN, reason);
    }
}
