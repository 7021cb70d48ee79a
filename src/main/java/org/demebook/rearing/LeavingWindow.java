package org.demebook.rearing;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.OptionalInt;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.Diary;
import org.demebook.notation.RoughDate;
import org.demebook.taxon.TaxonProfile.Rearing;
import org.jspecify.annotations.Nullable;

/**
 * The days on which a young is expected to be ready, from its age, its sheds and its meals; what is in the keeper's hand
 * (photograph, sex) or cannot be foreseen (health, mass) is left out.
 *
 * <p>Meals are offered at the young's own rhythm (median of its last gaps), or at that of the profile; each is taken without
 * help with the share that it took so far, 4 taken of 5 being added as what is known beforehand. The number of offers until
 * enough are taken in a row follows from that exactly; its 5 %, 50 % and 95 % points make the three days. So the window
 * narrows with every meal that is taken, and is a day once all that is left is waiting. Common practice, no source; a shed
 * that is missing is expected in the profile's window, each further one 28 to 42 days later.
 *
 * @param earliest no sooner, short of surprises: 5 in 100 are ready before
 * @param likely half are ready by then
 * @param latest 95 in 100 are ready by then; null: beyond what can be foreseen
 */
public record LeavingWindow(
        LocalDate earliest,
        @Nullable LocalDate likely,
        @Nullable LocalDate latest) {
    private static final double TAKEN_BEFOREHAND = 4;
    private static final double OFFERED_BEFOREHAND = 5;
    private static final double[] POINTS = {0.05, 0.5, 0.95};
    private static final int[] DAYS_BETWEEN_SHEDS = {28, 35, 42};

    /** A forecast further ahead is none. */
    private static final int MOST_OFFERS = 60;

    /** @return null when its birth is not known, or it died */
    static @Nullable LeavingWindow of(@Nullable RoughDate born, Diary diary, Rearing profile, LocalDate today) {
        if (born == null || born.earliest() == null || born.latest() == null) {
            return null;
        }
        var seen = diary.until(today);
        var days = new @Nullable LocalDate[3];
        for (int i = 0; i < 3; i++) {
            var birth = i == 0 ? born.earliest() : i == 2 ? born.latest() : middle(born.earliest(), born.latest());
            var fed = fed(i, birth, seen, profile, today);
            days[i] = fed == null
                    ? null
                    : latest(birth.plusDays(profile.daysOfAgeToLeave()), shed(i, birth, seen, profile, today), fed);
        }
        // early points may be beyond the horizon only together with the late ones
        var earliest = days[0] == null ? today.plusDays((long) MOST_OFFERS * profile.daysBetweenMeals()) : days[0];
        return new LeavingWindow(earliest, days[1], days[2]);
    }

    private static LocalDate middle(LocalDate first, LocalDate last) {
        return LocalDate.ofEpochDay((first.toEpochDay() + last.toEpochDay()) / 2);
    }

    private static LocalDate latest(LocalDate... days) {
        return Arrays.stream(days).max(Comparator.naturalOrder()).orElseThrow();
    }

    // ── sheds ────────────────────────────────────────────────────────────────────────────────────────────────────────

    private static LocalDate shed(int point, LocalDate birth, Diary diary, Rearing profile, LocalDate today) {
        var sheds = diary.sheds();
        int missing = profile.shedsToLeave() - sheds.size();
        if (missing <= 0) {
            return profile.shedsToLeave() == 0
                    ? birth
                    : sheds.get(profile.shedsToLeave() - 1).on();
        }
        var gap = DAYS_BETWEEN_SHEDS[point];
        var next = sheds.isEmpty()
                ? birth.plusDays(daysToFirstShed(point, profile))
                : sheds.get(sheds.size() - 1).on().plusDays(gap);
        return latest(next, today).plusDays((long) (missing - 1) * gap);
    }

    private static int daysToFirstShed(int point, Rearing profile) {
        return switch (point) {
            case 0 -> profile.daysToFirstShedAtLeast();
            case 1 -> (profile.daysToFirstShedAtLeast() + profile.daysToFirstShedAtMost()) / 2;
            default -> profile.daysToFirstShedLate();
        };
    }

    // ── meals ────────────────────────────────────────────────────────────────────────────────────────────────────────

    private static @Nullable LocalDate fed(int point, LocalDate birth, Diary diary, Rearing profile, LocalDate today) {
        var meals = diary.meals();
        int inARow = diary.mealsInARow();
        if (inARow >= profile.mealsToLeave()) {
            return diary.lastMealEaten()
                    .map(Meal::on)
                    .orElse(birth)
                    .plusDays(meals.isEmpty() ? 0 : profile.daysFromMealToLeave());
        }
        double share = (diary.mealsTakenAlone() + TAKEN_BEFOREHAND) / (meals.size() + OFFERED_BEFOREHAND);
        var offers = offersUntilInARow(share, inARow, profile.mealsToLeave(), POINTS[point]);
        if (offers.isEmpty()) {
            return null;
        }
        int rhythm = diary.daysBetweenMeals().orElse(profile.daysBetweenMeals());
        var next = diary.lastMeal()
                .map(meal -> meal.on().plusDays(rhythm))
                .orElseGet(() -> birth.plusDays(daysToFirstMeal(point, profile)));
        return latest(next, today)
                .plusDays((long) (offers.getAsInt() - 1) * rhythm)
                .plusDays(profile.daysFromMealToLeave());
    }

    private static int daysToFirstMeal(int point, Rearing profile) {
        return switch (point) {
            case 0 -> profile.daysToFirstMealAtLeast();
            case 1 -> (profile.daysToFirstMealAtLeast() + profile.daysToFirstMealAtMost()) / 2;
            default -> profile.daysToFirstMealAtMost();
        };
    }

    /**
     * How many offers it takes, with a probability, until enough are taken in a row: exactly, offer by offer, over the
     * chances of each length of the present row.
     *
     * @param share of the offers that are taken, above 0, at most 1
     * @param inARow taken in a row already, below {@code wanted}
     * @param point in (0, 1): the answer is the smallest number that is enough with at least this probability
     * @return empty beyond {@value #MOST_OFFERS}
     */
    static OptionalInt offersUntilInARow(double share, int inARow, int wanted, double point) {
        var chanceOfRow = new double[wanted];
        chanceOfRow[inARow] = 1;
        double done = 0;
        for (int offers = 1; offers <= MOST_OFFERS; offers++) {
            double refused = Arrays.stream(chanceOfRow).sum() * (1 - share);
            done += chanceOfRow[wanted - 1] * share;
            for (int row = wanted - 1; row > 0; row--) {
                chanceOfRow[row] = chanceOfRow[row - 1] * share;
            }
            chanceOfRow[0] = refused;
            if (done >= point - 1e-12) {
                return OptionalInt.of(offers);
            }
        }
        return OptionalInt.empty();
    }
}
