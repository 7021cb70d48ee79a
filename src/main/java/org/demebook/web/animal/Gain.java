package org.demebook.web.animal;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.demebook.notation.Mass;
import org.demebook.plot.Along;
import org.demebook.plot.Caption;
import org.demebook.plot.Growth;
import org.demebook.plot.Growth.Range;
import org.demebook.plot.Growth.Weighing;
import org.demebook.plot.Measure;
import org.demebook.plot.Numbers;
import org.demebook.plot.Series;
import org.demebook.plot.Trend;
import org.demebook.rearing.Growth.GrowthPoint;
import org.demebook.web.Visit;

/** Draws how an animal gains, in the keeper's unit. */
record Gain(Visit visit, AnimalMessages words) {
    private static final double WHOLE_FROM = 100;
    private static final int DAYS_OF_GROWTH = 3 * 365;

    /** Whether it is told by age: of one that grows, and was weighed when it was young. */
    static boolean byAge(List<GrowthPoint> points) {
        return points.stream().map(GrowthPoint::ageDays).anyMatch(age -> age != null && age < DAYS_OF_GROWTH);
    }

    /** The masses, whatever its age. */
    Trend alongTime(String number, List<GrowthPoint> points) {
        var unit = visit.getPreferences().mass();
        var ofDay = new TreeMap<Long, Double>();
        points.forEach(point -> ofDay.put(point.on().toEpochDay(), in(unit.grams(), point.grams())));
        var masses = ofDay.entrySet().stream()
                .map(day -> Series.Point.of(day.getKey(), day.getValue()))
                .toList();
        return Trend.of(
                new Caption(
                        "masses",
                        words.massesCaption(),
                        words.massesDescription(),
                        words.asList(),
                        words.growthNothing()),
                new Along.Days(words.day(), LifeStory.dates(visit)),
                measure(unit, ofDay.values().stream().mapToDouble(mass -> mass).max()),
                List.of(new Series(number, masses)),
                null,
                new Trend.Words(words.notWeighed(), words.littermates(), ""));
    }

    private Measure measure(Mass.Unit unit, OptionalDouble most) {
        return new Measure(
                words.massIn(unit.word()), Numbers.of(visit.getLocale()), most.orElse(0) < WHOLE_FROM ? 1 : 0, true);
    }

    Growth byAge(String number, List<GrowthPoint> points) {
        var unit = visit.getPreferences().mass();
        var ofDay = new TreeMap<Integer, GrowthPoint>(); // of one day the last
        points.stream().filter(point -> point.ageDays() != null).forEach(point -> ofDay.put(point.ageDays(), point));
        var masses = ofDay.entrySet().stream()
                .map(day -> new Weighing(
                        day.getKey(), in(unit.grams(), day.getValue().grams())))
                .toList();
        var ranges = ofDay.entrySet().stream()
                .filter(day -> day.getValue().siblings() != null
                        && day.getValue().siblings().lowGrams() != null
                        && day.getValue().siblings().highGrams() != null)
                .map(day -> new Range(
                        day.getKey(),
                        in(
                                unit.grams(),
                                Objects.requireNonNull(day.getValue().siblings().lowGrams())),
                        in(
                                unit.grams(),
                                Objects.requireNonNull(day.getValue().siblings().highGrams()))))
                .toList();
        var numbers = Numbers.of(visit.getLocale());
        return Growth.of(
                new Caption(
                        "growth",
                        words.growthCaption(),
                        words.growthDescription(),
                        words.asList(),
                        words.growthNothing()),
                new Along.Whole(words.ageDays(), numbers),
                measure(unit, masses.stream().mapToDouble(Weighing::massGrams).max()),
                masses,
                ranges,
                new Growth.Words(number, words.littermates(), words.notWeighed()));
    }

    private static double in(BigDecimal gramsOfUnit, BigDecimal grams) {
        return grams.doubleValue() / gramsOfUnit.doubleValue();
    }
}
