package org.demebook.rearing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.demebook.diary.Diary;
import org.demebook.diary.Diary.Weighing;
import org.demebook.notation.Mass;

/**
 * Which young of a litter are behind their siblings: lighter than nine tenths of them at the same age, or three meals behind
 * half of them. Both thresholds are common practice, with no source; below so many siblings nothing is said.
 */
final class Siblings {
    private static final double LIGHTEST = 0.1;
    private static final int MEALS_BEHIND = 3;

    /** A tenth of fewer is no animal. */
    private static final int FEWEST_WITH_MASS = 5;

    private static final int FEWEST_WITH_MEALS = 3;

    private Siblings() {}

    /**
     * Why a young is behind its siblings; empty when it is not, or too little is known.
     *
     * @param siblings the others of its litter that live
     */
    static List<String> behind(Diary own, List<Diary> siblings, LocalDate today) {
        var reasons = new ArrayList<String>();
        own.until(today).lastWeighing().ifPresent(last -> addIfLight(last, siblings, reasons));
        addIfFewMeals(own, siblings, reasons);
        return reasons;
    }

    private static void addIfLight(Weighing last, List<Diary> siblings, List<String> reasons) {
        var grams = Growth.massesOn(
                last.on(), siblings.stream().map(Diary::weighings).toList());
        if (grams.length < FEWEST_WITH_MASS) {
            return;
        }
        double tenth = Growth.quantile(grams, LIGHTEST);
        if (last.milligrams() / 1000.0 < tenth) {
            reasons.add(
                    "It weighed %s g on %s; of its %d siblings nine tenths weighed more than %.1f g, half more than %.1f g."
                            .formatted(
                                    Mass.grams(last.milligrams()),
                                    last.on(),
                                    grams.length,
                                    tenth,
                                    Growth.quantile(grams, 0.5)));
        }
    }

    private static void addIfFewMeals(Diary own, List<Diary> siblings, List<String> reasons) {
        var meals = siblings.stream()
                .filter(sibling -> !sibling.meals().isEmpty())
                .mapToDouble(Diary::mealsTakenAlone)
                .sorted()
                .toArray();
        if (meals.length < FEWEST_WITH_MEALS) {
            return;
        }
        double half = Growth.quantile(meals, 0.5);
        if (half - own.mealsTakenAlone() >= MEALS_BEHIND) {
            reasons.add("It took %d of its meals without help; half of its siblings that were fed took %s or more."
                    .formatted(
                            own.mealsTakenAlone(),
                            BigDecimal.valueOf(half).stripTrailingZeros().toPlainString()));
        }
    }
}
