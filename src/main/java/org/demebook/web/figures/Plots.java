package org.demebook.web.figures;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.demebook.ancestry.GenePoolView;
import org.demebook.ancestry.PoolOverTime;
import org.demebook.ancestry.PoolOverTime.AgeGroup;
import org.demebook.ancestry.PoolOverTime.YearEnd;
import org.demebook.plot.Along;
import org.demebook.plot.Caption;
import org.demebook.plot.Measure;
import org.demebook.plot.Name;
import org.demebook.plot.Numbers;
import org.demebook.plot.Pyramid;
import org.demebook.plot.Series;
import org.demebook.plot.Series.Point;
import org.demebook.plot.Shares;
import org.demebook.plot.Trend;

/** Draws the figures of a population, in the words of the one who looks. */
final class Plots {
    private final FiguresMessages words;
    private final Locale locale;
    private final PoolOverTime time;

    Plots(FiguresMessages words, Locale locale, PoolOverTime time) {
        this.words = words;
        this.locale = locale;
        this.time = time;
    }

    Trend living() {
        var points = time.course().stream()
                .map(end -> Point.of(end.on().getYear(), end.living()))
                .toList();
        return Trend.of(
                caption("living-over-time", words.livingOverTime(), words.livingOverTimeSays()),
                years(),
                new Measure(words.animals(), Numbers.of(locale), 0, true),
                List.of(new Series(words.living(), points)),
                null,
                trendWords());
    }

    /** What was, and what drift alone would leave. */
    Trend geneDiversity() {
        var points = new ArrayList<Point>();
        time.course().forEach(end -> points.add(diversity(end)));
        if (time.drift() != null) {
            time.drift()
                    .ahead()
                    .forEach(ahead ->
                            points.add(between(ahead.year(), ahead.geneDiversity(), ahead.low(), ahead.high())));
        }
        return Trend.of(
                caption("diversity-over-time", words.diversityOverTime(), words.diversityOverTimeSays()),
                years(),
                new Measure(words.geneDiversity(), Numbers.of(locale), 3, false),
                List.of(new Series(words.geneDiversity(), points)),
                time.drift() == null ? null : new Trend.Now(last().on().getYear(), words.now()),
                trendWords());
    }

    private YearEnd last() {
        return time.course().get(time.course().size() - 1);
    }

    private static Point diversity(YearEnd end) {
        int year = end.on().getYear();
        var value = end.geneDiversity();
        var low = end.geneDiversityIfUnknownAreSiblings();
        return value == null || low == null ? Point.missing(year) : between(year, value, Math.min(low, value), value);
    }

    /** Without an interval where it has no width. */
    private static Point between(int year, double value, double low, double high) {
        return high - low < 1e-9 ? Point.of(year, value) : new Point(year, value, low, high);
    }

    Trend knownAncestry() {
        var points = time.course().stream()
                .map(end -> end.knownAncestry() == null
                        ? Point.missing(end.on().getYear())
                        : Point.of(end.on().getYear(), end.knownAncestry()))
                .toList();
        return Trend.of(
                caption("known-over-time", words.knownOverTime(), words.knownOverTimeSays()),
                years(),
                new Measure(words.knownAncestry(), Numbers.percent(locale), 2, true),
                List.of(new Series(words.knownAncestry(), points)),
                null,
                trendWords());
    }

    Pyramid ages() {
        var classes = time.ages().stream()
                .map(group -> new Pyramid.AgeClass(age(group), group.males(), group.females(), group.unknown()))
                .toList();
        return Pyramid.of(
                caption("ages", words.ages(), words.agesSay()),
                classes,
                Numbers.of(locale),
                new Pyramid.Words(words.age(), words.males(), words.females(), words.unknownSex()));
    }

    private String age(AgeGroup group) {
        if (group.from() == null || group.to() == null) {
            return words.ageUnknown();
        }
        return group.from().equals(group.to())
                ? Integer.toString(group.from())
                : words.ageClass(group.from(), group.to());
    }

    /** @param base where addresses of the population's pages begin */
    Shares founders(GenePoolView pool, String base) {
        double equal = 1.0 / Math.max(1, pool.founders().size());
        var shares = pool.founders().stream()
                .limit(Shares.MOST)
                .map(founder -> new Shares.Share(
                        new Name(founder.animal(), base + "/animals/" + founder.animal()),
                        founder.contribution(),
                        equal))
                .toList();
        return Shares.of(
                new Caption("shares", words.sharesSay(), words.shares(), words.asTable(), words.noFounders()),
                shares,
                new Measure(words.share(), Numbers.percent(locale), 3, true),
                new Shares.Words(words.founder(), words.share(), words.equalShare(), words.missing()));
    }

    /** A heading above says already what is plotted: below it stands what the plot shows. */
    private Caption caption(String id, String title, String description) {
        return new Caption(id, description, title, words.asTable(), words.nothing());
    }

    private Along years() {
        return new Along.Whole(words.year(), Numbers.years(locale));
    }

    private Trend.Words trendWords() {
        return new Trend.Words(words.missing(), words.interval(), words.projected());
    }
}
