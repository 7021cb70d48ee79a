package org.demebook.diary;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.demebook.diary.CareRecord.HealthNote;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Measures;
import org.demebook.diary.CareRecord.Move;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.diary.CareRecord.Shed;

/**
 * What was written down of one animal, as far as whoever asks may see it; none of it withdrawn.
 *
 * @param records in the order in which they happened; of one day, in the order in which they were entered
 */
public record Diary(List<CareRecord> records) {
    /** @param milligrams above 0 */
    public record Weighing(LocalDate on, int milligrams) {}

    /** So many gaps between meals make a rhythm. */
    private static final int GAPS_OF_A_RHYTHM = 3;

    /** The rhythm is that of the last gaps; earlier ones were of a smaller animal. */
    private static final int LAST_GAPS = 6;

    public Diary {
        records = records.stream().sorted(Comparator.comparing(CareRecord::on)).toList();
    }

    public static Diary of(CareRecord... records) {
        return new Diary(List.of(records));
    }

    /** This diary with one more record. */
    public Diary with(CareRecord record) {
        return new Diary(Stream.concat(records.stream(), Stream.of(record)).toList());
    }

    /** As it was at the end of a day. */
    public Diary until(LocalDate day) {
        return new Diary(
                records.stream().filter(record -> !record.on().isAfter(day)).toList());
    }

    private <R extends CareRecord> Stream<R> all(Class<R> kind) {
        return records.stream().filter(kind::isInstance).map(kind::cast);
    }

    private static <R> Optional<R> last(Stream<R> records) {
        return records.reduce((earlier, later) -> later);
    }

    public List<Shed> sheds() {
        return all(Shed.class).toList();
    }

    /** All that were offered, whether taken or not. */
    public List<Meal> meals() {
        return all(Meal.class).toList();
    }

    public Optional<Meal> lastMeal() {
        return last(all(Meal.class));
    }

    /** The last one that it ate, by itself or with help. */
    public Optional<Meal> lastMealEaten() {
        return last(all(Meal.class).filter(meal -> meal.outcome() != Meal.Outcome.REFUSED));
    }

    public int mealsTakenAlone() {
        return (int) all(Meal.class).filter(Diary::alone).count();
    }

    /** How many of the last meals it took by itself, one after the other; a refusal, or help, ends the row. */
    public int mealsInARow() {
        int inARow = 0;
        for (var meal : meals()) {
            inARow = alone(meal) ? inARow + 1 : 0;
        }
        return inARow;
    }

    private static boolean alone(Meal meal) {
        return meal.outcome() == Meal.Outcome.TAKEN;
    }

    /** Days from meal to meal: the median of its last gaps; empty below three of them. */
    public OptionalInt daysBetweenMeals() {
        var days = all(Meal.class).map(Meal::on).distinct().toList();
        var gaps = new ArrayList<Integer>();
        for (int i = Math.max(1, days.size() - LAST_GAPS); i < days.size(); i++) {
            gaps.add((int) ChronoUnit.DAYS.between(days.get(i - 1), days.get(i)));
        }
        if (gaps.size() < GAPS_OF_A_RHYTHM) {
            return OptionalInt.empty();
        }
        gaps.sort(null);
        return OptionalInt.of(gaps.get(gaps.size() / 2));
    }

    public List<Weighing> weighings() {
        return all(Measures.class)
                .filter(measures -> measures.mass() != null && measures.mass().milligrams() > 0)
                .map(measures -> new Weighing(measures.on(), measures.mass().milligrams()))
                .toList();
    }

    public Optional<Weighing> lastWeighing() {
        return last(weighings().stream());
    }

    public List<Measures> measures() {
        return all(Measures.class).toList();
    }

    public List<HealthNote> openHealthNotes() {
        return all(HealthNote.class).filter(note -> note.endedOn() == null).toList();
    }

    public List<HealthTest> tests() {
        return all(HealthTest.class).toList();
    }

    public Optional<Move> lastMove() {
        return last(all(Move.class));
    }

    public boolean has(Predicate<CareRecord> what) {
        return records.stream().anyMatch(what);
    }

    /** Those that go on. */
    public List<Quarantine> quarantines() {
        return all(Quarantine.class)
                .filter(quarantine -> quarantine.endedOn() == null)
                .toList();
    }
}
