package org.demebook.diary;

import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.Rule.EVENT_AFTER_DEATH;
import static org.demebook.problem.Rule.EVENT_BEFORE_BIRTH;
import static org.demebook.problem.Rule.MASS_LOST;
import static org.demebook.problem.Rule.MEAL_BEFORE_SHED;
import static org.demebook.problem.Rule.MEASURE_UNIT;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.demebook.diary.CareRecord.HealthNote;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Measures;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.notation.Length;
import org.demebook.notation.Mass;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Rule;
import org.demebook.registry.Breach;
import org.demebook.registry.Kin;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;

/** What is wrong with a care record, or worth a second look. Thresholds are common practice, with no source. */
final class CareRules {
    /** A neonate weighs at least half and at most double of what is usual. */
    private static final double LEAST = 0.5;

    private static final double MOST = 2;

    /** Longer is no neonate: 70 cm. */
    private static final int LONGEST_NEONATE_MILLIMETRES = 700;

    /** An animal's own earlier mass says for so long what the next one should be like. */
    private static final int DAYS_OF_A_MASS = 28;

    /** To lose more is worth a second look. */
    private static final double GREATEST_LOSS = 0.2;

    private final CareRecord record;
    private final Kin animal;
    private final Diary before;
    private final TaxonProfile profile;
    private final List<Breach> breaches = new ArrayList<>();

    private CareRules(CareRecord record, Kin animal, Diary before, TaxonProfile profile) {
        this.record = record;
        this.animal = animal;
        this.before = before;
        this.profile = profile;
    }

    /**
     * @param diary what is known of the animal without this record
     * @param today in UTC; a day of grace is given, since it may be tomorrow already where the keeper lives
     */
    static List<Breach> check(CareRecord record, Kin animal, Diary diary, TaxonProfile profile, LocalDate today) {
        var rules = new CareRules(record, animal, diary.until(record.on()), profile);
        rules.checkDays(today.plusDays(1));
        if (record instanceof Measures measures) {
            rules.checkMass(measures);
            rules.checkLength(measures);
        } else if (record instanceof Meal meal) {
            rules.checkMeal(meal);
        }
        return rules.breaches;
    }

    /** Whether a record may have ended on a day. */
    static Optional<Breach> checkEnd(CareRecord record, LocalDate on, LocalDate today) {
        if (on.isAfter(today.plusDays(1))) {
            return Optional.of(future("on", on));
        }
        if (on.isBefore(record.on())) {
            return Optional.of(Breach.error(
                    INVALID_VALUES,
                    "on",
                    on,
                    "It began on %s and cannot end on %s; one of the two days is wrong.".formatted(record.on(), on)));
        }
        return Optional.empty();
    }

    private void checkDays(LocalDate lastDay) {
        var on = record.on();
        requirePast(dayField(), on, lastDay);
        if (record instanceof HealthNote note) {
            requirePast("endedOn", note.endedOn(), lastDay);
        } else if (record instanceof Quarantine quarantine) {
            requirePast("endedOn", quarantine.endedOn(), lastDay);
        }
        if (animal.died() != null && animal.died().surelyBefore(on)) {
            warn(
                    EVENT_AFTER_DEATH,
                    dayField(),
                    on,
                    "%s died on %s, and this is of %s. Was it another animal, or is one of the two dates wrong?"
                            .formatted(animal.label(), animal.died(), on),
                    null);
        }
        if (animal.born() != null
                && animal.born().earliest() != null
                && on.isBefore(animal.born().earliest())) {
            warn(
                    EVENT_BEFORE_BIRTH,
                    dayField(),
                    on,
                    "%s was born on %s, and this is of %s. Was it another animal, or is one of the two dates wrong?"
                            .formatted(animal.label(), animal.born(), on),
                    null);
        }
    }

    private String dayField() {
        return record instanceof HealthTest ? "sampledOn" : record instanceof Quarantine ? "from" : "on";
    }

    private void requirePast(String field, @Nullable LocalDate day, LocalDate lastDay) {
        if (day != null && day.isAfter(lastDay)) {
            breaches.add(future(field, day));
        }
    }

    private static Breach future(String field, LocalDate day) {
        return Breach.error(
                ProblemType.DATE_IN_FUTURE,
                Rule.DATE_IN_FUTURE,
                field,
                day,
                "%s lies in the future; check the year.".formatted(day),
                null);
    }

    // ── mass and length ──────────────────────────────────────────────────────────────────────────────────────────────

    private void checkMass(Measures measures) {
        var mass = measures.mass();
        if (mass == null) {
            return;
        }
        var age = ageDays();
        var last = before.lastWeighing();
        if (age != null && age >= 0 && age < profile.rearing().daysToFirstMealAtLeast()) {
            int usual = profile.litter().neonateMassGrams() * 1000;
            if (!near(mass.milligrams(), usual)) {
                warn(
                        MEASURE_UNIT,
                        "mass",
                        mass.written(),
                        "%s weighs %s g at %d days, and a neonate usually weighs about %d g: g or oz?"
                                .formatted(
                                        animal.label(),
                                        mass.grams(),
                                        age,
                                        profile.litter().neonateMassGrams()),
                        likelierMass(mass, usual));
                return;
            }
        } else if (last.isPresent()
                && ChronoUnit.DAYS.between(last.get().on(), record.on()) <= DAYS_OF_A_MASS
                && !near(mass.milligrams(), last.get().milligrams())) {
            warn(
                    MEASURE_UNIT,
                    "mass",
                    mass.written(),
                    "%s weighs %s g, and weighed %s g on %s: g or oz?"
                            .formatted(
                                    animal.label(),
                                    mass.grams(),
                                    Mass.grams(last.get().milligrams()),
                                    last.get().on()),
                    likelierMass(mass, last.get().milligrams()));
            return;
        }
        last.ifPresent(earlier -> checkLoss(mass, earlier));
    }

    private void checkLoss(Mass mass, Diary.Weighing earlier) {
        double loss = 1 - (double) mass.milligrams() / earlier.milligrams();
        if (loss > GREATEST_LOSS) {
            warn(
                    MASS_LOST,
                    "mass",
                    mass.written(),
                    ("%s weighs %s g, %.0f %% less than the %s g of %s. Weigh it again; a dam is lighter after a birth, any"
                                    + " other animal that loses so much belongs before a reptile veterinarian.")
                            .formatted(
                                    animal.label(),
                                    mass.grams(),
                                    loss * 100,
                                    Mass.grams(earlier.milligrams()),
                                    earlier.on()),
                    null);
        }
    }

    private void checkLength(Measures measures) {
        var length = measures.length();
        var age = ageDays();
        if (length == null
                || age == null
                || age >= profile.rearing().daysOfAgeToLeave()
                || length.millimetres() <= LONGEST_NEONATE_MILLIMETRES) {
            return;
        }
        var value = value(length.written());
        var likelier = Arrays.stream(Length.Unit.values())
                .map(unit -> Length.of(value, unit))
                .filter(other -> near(other.millimetres(), profile.litter().neonateLengthMillimetres()))
                .findFirst()
                .map(other -> "%s (%s mm) is likelier.".formatted(other.written(), other.millimetres()))
                .orElse(null);
        warn(
                MEASURE_UNIT,
                "length",
                length.written(),
                "%s is %d mm long at %d days, and no neonate is longer than %d mm: in or cm?"
                        .formatted(animal.label(), length.millimetres(), age, LONGEST_NEONATE_MILLIMETRES),
                likelier);
    }

    /** The unit in which the same figure is near to what was expected. */
    private static @Nullable String likelierMass(Mass mass, int expectedMilligrams) {
        return massIn(mass, milligrams -> near(milligrams, expectedMilligrams))
                .map(other -> "%s (%s g) is likelier."
                        .formatted(other.written(), other.grams().setScale(1, RoundingMode.HALF_UP)))
                .orElse(null);
    }

    private static Optional<Mass> massIn(Mass mass, IntPredicate fits) {
        var value = value(mass.written());
        return Arrays.stream(Mass.Unit.values())
                // in any other unit it would be beyond every snake
                .filter(unit -> value.multiply(unit.grams()).compareTo(BigDecimal.valueOf(200_000)) <= 0)
                .map(unit -> Mass.of(value, unit))
                .filter(other -> fits.test(other.milligrams()))
                .findFirst();
    }

    private static BigDecimal value(String written) {
        return new BigDecimal(written.substring(0, written.indexOf(' ')));
    }

    private static boolean near(int found, int expected) {
        return found >= LEAST * expected && found <= MOST * expected;
    }

    // ── meals ────────────────────────────────────────────────────────────────────────────────────────────────────────

    private void checkMeal(Meal meal) {
        var age = ageDays();
        if (age != null
                && age >= 0
                && age <= profile.rearing().daysToFirstShedLate()
                && before.sheds().isEmpty()) {
            breaches.add(Breach.notice(
                    MEAL_BEFORE_SHED,
                    "on",
                    meal.on(),
                    "%s was offered a meal at %d days, and no shed of it is written down. Did it shed, write that down too."
                            .formatted(animal.label(), age),
                    null));
        }
    }

    /** Null where the birth is not known to the day. */
    private @Nullable Integer ageDays() {
        var born = animal.born() == null ? null : animal.born().day().orElse(null);
        return born == null ? null : (int) ChronoUnit.DAYS.between(born, record.on());
    }

    private void warn(Rule rule, String field, @Nullable Object value, String message, @Nullable String likelier) {
        breaches.add(Breach.warning(rule, field, value, message, likelier));
    }
}
