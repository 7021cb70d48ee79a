package org.demebook.rearing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.demebook.diary.Diary;
import org.demebook.diary.Diary.Weighing;
import org.demebook.notation.Mass;
import org.demebook.notation.RoughDate;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * How an animal gains, beside the siblings of its litter whose masses the asker sees.
 *
 * @param gramsPerWeek the median of the slopes between all pairs of masses (the Theil–Sen estimator), which one wrong mass
 *     does not bend; null below two days with a mass
 * @param siblings how many siblings have masses
 * @param lighterSiblings share of the siblings that were lighter at the age of its last mass, those of the same mass half
 *     counted, 0 to 1; null when none of them was weighed around that age
 * @param behind why it is behind its siblings; empty when it is not, or too little is known
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record Growth(
        String animal,
        List<GrowthPoint> points,
        @Nullable BigDecimal gramsPerWeek,
        int siblings,
        @Nullable BigDecimal lighterSiblings,
        List<String> behind) {

    /**
     * A mass.
     *
     * @param ageDays null where the birth is not known to the day
     * @param siblings null where none of them was weighed around that age
     */
    public record GrowthPoint(
            LocalDate on,
            @Nullable Integer ageDays,
            BigDecimal grams,
            @Nullable SiblingBand siblings) {}

    /**
     * The siblings at the same age, each on the straight line between its two nearest masses.
     *
     * @param count how many of them there are at that age
     * @param lowGrams a tenth of them are lighter; null below three
     * @param highGrams a tenth of them are heavier; null below three
     */
    public record SiblingBand(
            int count,
            BigDecimal medianGrams,
            @Nullable BigDecimal lowGrams,
            @Nullable BigDecimal highGrams) {}

    private static final int FEWEST_OF_A_BAND = 3;

    static Growth of(String number, @Nullable RoughDate born, Diary diary, List<Diary> siblings, List<String> behind) {
        var birth = born == null ? null : born.day().orElse(null);
        var weighed = siblings.stream()
                .map(Diary::weighings)
                .filter(weighings -> !weighings.isEmpty())
                .toList();
        var points = new ArrayList<GrowthPoint>();
        for (var weighing : diary.weighings()) {
            var age = birth == null ? null : (int) ChronoUnit.DAYS.between(birth, weighing.on());
            points.add(new GrowthPoint(
                    weighing.on(),
                    age,
                    Mass.grams(weighing.milligrams()),
                    age == null ? null : band(massesOn(weighing.on(), weighed))));
        }
        var slope = gramsPerWeek(diary.weighings());
        return new Growth(
                number,
                points,
                slope.isEmpty() ? null : BigDecimal.valueOf(slope.getAsDouble()).setScale(2, RoundingMode.HALF_UP),
                weighed.size(),
                birth == null ? null : lighter(diary, weighed),
                behind);
    }

    /** The median of the slopes between all pairs of masses of different days. */
    static OptionalDouble gramsPerWeek(List<Weighing> weighings) {
        var slopes = new ArrayList<Double>();
        for (int i = 0; i < weighings.size(); i++) {
            for (int j = i + 1; j < weighings.size(); j++) {
                var earlier = weighings.get(i);
                var later = weighings.get(j);
                long days = ChronoUnit.DAYS.between(earlier.on(), later.on());
                if (days != 0) {
                    slopes.add((later.milligrams() - earlier.milligrams()) / 1000.0 / days * 7);
                }
            }
        }
        return slopes.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(quantile(sorted(slopes), 0.5));
    }

    /** What siblings weighed on a day, in grams and in order; those that were not yet, or no longer, weighed are left out. */
    static double[] massesOn(LocalDate day, List<List<Weighing>> siblings) {
        return siblings.stream()
                .map(weighings -> massOn(day, weighings))
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .sorted()
                .toArray();
    }

    private static OptionalDouble massOn(LocalDate day, List<Weighing> weighings) {
        Weighing before = null;
        for (var weighing : weighings) {
            if (weighing.on().equals(day)) {
                return OptionalDouble.of(weighing.milligrams() / 1000.0);
            }
            if (weighing.on().isAfter(day)) {
                return before == null ? OptionalDouble.empty() : OptionalDouble.of(between(before, weighing, day));
            }
            before = weighing;
        }
        return OptionalDouble.empty();
    }

    private static double between(Weighing before, Weighing after, LocalDate day) {
        double part =
                (double) ChronoUnit.DAYS.between(before.on(), day) / ChronoUnit.DAYS.between(before.on(), after.on());
        return (before.milligrams() + part * (after.milligrams() - before.milligrams())) / 1000.0;
    }

    private static @Nullable SiblingBand band(double[] grams) {
        if (grams.length == 0) {
            return null;
        }
        var enough = grams.length >= FEWEST_OF_A_BAND;
        return new SiblingBand(
                grams.length,
                rounded(quantile(grams, 0.5)),
                enough ? rounded(quantile(grams, 0.1)) : null,
                enough ? rounded(quantile(grams, 0.9)) : null);
    }

    private static @Nullable BigDecimal lighter(Diary diary, List<List<Weighing>> siblings) {
        var last = diary.lastWeighing().orElse(null);
        var grams = last == null ? new double[0] : massesOn(last.on(), siblings);
        if (last == null || grams.length == 0) {
            return null;
        }
        double own = last.milligrams() / 1000.0;
        double below = Arrays.stream(grams)
                .map(other -> other < own ? 1 : other == own ? 0.5 : 0)
                .sum();
        return BigDecimal.valueOf(below / grams.length).setScale(2, RoundingMode.HALF_UP);
    }

    /**
     * The value below which a share of the values lie, linear between neighbours (definition 7 of Hyndman &amp; Fan).
     *
     * @param sorted at least one value
     * @param share 0 to 1
     */
    static double quantile(double[] sorted, double share) {
        double at = (sorted.length - 1) * share;
        int below = (int) Math.floor(at);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
    }

    private static double[] sorted(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    private static BigDecimal rounded(double grams) {
        return BigDecimal.valueOf(grams).setScale(1, RoundingMode.HALF_UP);
    }
}
