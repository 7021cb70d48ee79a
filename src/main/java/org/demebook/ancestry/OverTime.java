package org.demebook.ancestry;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.demebook.ancestry.PoolOverTime.AgeGroup;
import org.demebook.ancestry.PoolOverTime.Drift;
import org.demebook.ancestry.PoolOverTime.YearAhead;
import org.demebook.ancestry.PoolOverTime.YearEnd;
import org.demebook.kinship.EffectiveSize;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Sex;
import org.jspecify.annotations.Nullable;

/** Reckons a pool over time. O(years · population). */
final class OverTime {
    private static final int MOST_YEARS = 60;
    private static final int MOST_AGES = 12;
    private static final int GENERATIONS_AHEAD = 3;
    private static final int LEAST_AHEAD = 10;
    private static final int MOST_AHEAD = 30;
    private static final double DAYS_OF_YEAR = 365.25;

    private final Snapshot snapshot;
    private final LocalDate today;
    private final Lifetimes lifetimes;
    /** Those who live today and are shown, ascending. */
    private final int[] living;

    private OverTime(Snapshot snapshot, LocalDate today) {
        this.snapshot = snapshot;
        this.today = today;
        lifetimes = new Lifetimes(snapshot);
        living = Arrays.stream(snapshot.living()).filter(snapshot::isShown).toArray();
    }

    static PoolOverTime of(Snapshot snapshot, LocalDate today) {
        var time = new OverTime(snapshot, today);
        var course = time.course();
        return new PoolOverTime(
                course,
                time.ages(),
                snapshot.living().length - time.living.length,
                (int) Arrays.stream(time.living)
                        .filter(row -> time.lifetimes.since(row) == null)
                        .count(),
                time.drift(course.get(course.size() - 1)));
    }

    private List<YearEnd> course() {
        var course = new ArrayList<YearEnd>();
        var first = lifetimes.first();
        if (first != null) {
            int year = Math.max(first.getYear(), today.getYear() - MOST_YEARS);
            for (; year < today.getYear(); year++) {
                var end = MonthDay.of(12, 31).atYear(year);
                course.add(YearEnd.of(snapshot, end, lifetimes.on(end)));
            }
        }
        course.add(YearEnd.of(snapshot, today, living));
        return course;
    }

    private List<AgeGroup> ages() {
        var years = Arrays.stream(living).map(this::age).toArray();
        int oldest = Arrays.stream(years).max().orElse(-1);
        int width = oldest / MOST_AGES + 1;
        var groups = new ArrayList<AgeGroup>();
        for (int from = 0; from <= oldest; from += width) {
            int to = from + width - 1;
            groups.add(group(from, to, years));
        }
        if (Arrays.stream(years).anyMatch(age -> age < 0)) {
            groups.add(group(null, null, years));
        }
        return groups;
    }

    private AgeGroup group(@Nullable Integer from, @Nullable Integer to, int[] years) {
        int[] sexes = new int[Sex.values().length];
        for (int i = 0; i < living.length; i++) {
            if (from == null || to == null ? years[i] < 0 : years[i] >= from && years[i] <= to) {
                sexes[snapshot.sex(living[i]).ordinal()]++;
            }
        }
        return new AgeGroup(
                from, to, sexes[Sex.MALE.ordinal()], sexes[Sex.FEMALE.ordinal()], sexes[Sex.UNKNOWN.ordinal()]);
    }

    /** In full years, by the latest day of birth; below zero where that is not known. */
    private int age(int row) {
        var born = snapshot.bornLatest(row);
        return born == null ? -1 : (int) Math.max(0, ChronoUnit.YEARS.between(born, today));
    }

    private @Nullable Drift drift(YearEnd now) {
        var young = IntStream.range(0, snapshot.size())
                .filter(row -> snapshot.isShown(row)
                        && snapshot.bornLatest(row) != null
                        && snapshot.shownDam(row) != Pedigree.UNKNOWN
                        && snapshot.shownSire(row) != Pedigree.UNKNOWN)
                .toArray();
        double generation = snapshot.pedigree().depth().generationLength(bornAt(), young);
        if (!(generation > 0) || now.geneDiversity() == null) {
            return null;
        }
        var last = bornWithin(young, generation, 0);
        if (last.length == 0) {
            return null;
        }
        int sires = distinct(last, snapshot::shownSire);
        int dams = distinct(last, snapshot::shownDam);
        double size = EffectiveSize.fromSexRatio(sires, dams);
        var byInbreeding = byInbreeding(bornWithin(young, 2 * generation, generation), last);
        return new Drift(
                generation,
                sires,
                dams,
                size,
                byInbreeding,
                ahead(now.geneDiversity(), generation, size, byInbreeding == null ? size : byInbreeding));
    }

    /** By row, in years; not a number where it is not known, or not shown. */
    private double[] bornAt() {
        double[] years = new double[snapshot.size()];
        for (int row = 0; row < years.length; row++) {
            var born = snapshot.isShown(row) ? snapshot.bornLatest(row) : null;
            years[row] = born == null ? Double.NaN : born.toEpochDay() / DAYS_OF_YEAR;
        }
        return years;
    }

    /** Of these, those born after the one and not after the other, in years before today. */
    private int[] bornWithin(int[] young, double begin, double end) {
        double now = today.toEpochDay() / DAYS_OF_YEAR;
        double[] at = bornAt();
        return Arrays.stream(young)
                .filter(row -> at[row] > now - begin && at[row] <= now - end)
                .toArray();
    }

    private static int distinct(int[] young, IntUnaryOperator parent) {
        return (int) Arrays.stream(young).map(parent).distinct().count();
    }

    private @Nullable Double byInbreeding(int[] before, int[] last) {
        if (before.length == 0) {
            return null;
        }
        double rate = EffectiveSize.inbreedingRate(meanInbreeding(before), meanInbreeding(last));
        return rate > 0 ? EffectiveSize.fromInbreedingRate(rate) : null;
    }

    private double meanInbreeding(int[] young) {
        return Arrays.stream(young)
                .mapToDouble(snapshot.pedigree()::inbreeding)
                .average()
                .orElse(Double.NaN);
    }

    private List<YearAhead> ahead(double diversity, double generation, double size, double otherSize) {
        int years = (int) Math.min(MOST_AHEAD, Math.max(LEAST_AHEAD, Math.round(GENERATIONS_AHEAD * generation)));
        var ahead = new ArrayList<YearAhead>();
        for (int i = 1; i <= years; i++) {
            double generations = i / generation;
            ahead.add(new YearAhead(
                    today.getYear() + i,
                    diversity * EffectiveSize.retained(size, generations),
                    diversity * EffectiveSize.retained(Math.min(size, otherSize), generations),
                    diversity * EffectiveSize.retained(Math.max(size, otherSize), generations)));
        }
        return ahead;
    }
}
