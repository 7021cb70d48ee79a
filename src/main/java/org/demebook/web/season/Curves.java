package org.demebook.web.season;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import org.demebook.plot.Along;
import org.demebook.plot.Caption;
import org.demebook.plot.Measure;
import org.demebook.plot.Name;
import org.demebook.plot.Numbers;
import org.demebook.plot.Series;
import org.demebook.plot.Series.Point;
import org.demebook.plot.Tradeoff;
import org.demebook.plot.Tradeoff.Choice;
import org.demebook.plot.Tradeoff.Kind;
import org.demebook.plot.Trend;
import org.demebook.programme.OutlookView;
import org.demebook.programme.OutlookView.SeasonAhead;
import org.demebook.programme.SeasonPlanView;
import org.demebook.web.Pages;
import org.demebook.web.Visit;

/** Draws what a plan gives up of one figure for the other, and what years ahead may bring. */
@ApplicationScoped
class Curves {
    private static final int DECIMALS = 4;
    private static final double SAME = 1e-9;

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    PlanShown plan(SeasonPlanView plan) {
        return PlanShown.of(plan, tradeoff(plan));
    }

    private Tradeoff tradeoff(SeasonPlanView plan) {
        var words = words();
        var choices = new ArrayList<Choice>();
        for (var point : plan.curve()) {
            if (Math.abs(point.geneDiversity() - plan.geneDiversityAfter()) > SAME
                    || Math.abs(point.meanInbreeding() - plan.meanInbreeding()) > SAME) {
                choices.add(new Choice(
                        Name.of(words.otherPlan(choices.size() + 1)),
                        point.geneDiversity(),
                        point.meanInbreeding(),
                        Kind.POSSIBLE));
            }
        }
        choices.add(
                new Choice(Name.of(words.thisPlan()), plan.geneDiversityAfter(), plan.meanInbreeding(), Kind.CHOSEN));
        choices.add(new Choice(Name.of(words.bound()), plan.geneDiversityAtBest(), Double.NaN, Kind.BOUND));
        return Tradeoff.of(
                new Caption("curve", words.curveTitle(), words.curveShows(), words.asTable(), words.nothingToDraw()),
                choices,
                measure(words.geneDiversityAfter()),
                measure(words.meanInbreeding()),
                new Tradeoff.Words(
                        words.plan(),
                        words.what(),
                        words.possible(),
                        words.thisPlan(),
                        words.possible(),
                        words.bound(),
                        words.noFigure()));
    }

    Trend ahead(OutlookView outlook) {
        var words = words();
        var expected = new Series(
                words.expected(),
                outlook.seasons().stream()
                        .map(season -> Point.of(season.years(), season.geneDiversity()))
                        .toList());
        var drawn = new Series(
                words.drawn(), outlook.seasons().stream().map(Curves::drawn).toList());
        return Trend.of(
                new Caption("ahead", words.aheadTitle(), words.aheadShows(), words.asTable(), words.nothingToDraw()),
                new Along.Whole(words.years(), Numbers.years(visit.getLocale())),
                measure(words.geneDiversity()),
                List.of(expected, drawn),
                new Trend.Now(0, ""),
                new Trend.Words(words.noFigure(), words.nineOfTen(), words.projected()));
    }

    private static Point drawn(SeasonAhead season) {
        var range = season.drawn();
        return range == null
                ? Point.missing(season.years())
                : new Point(season.years(), range.mean(), range.low(), range.high());
    }

    private Measure measure(String name) {
        return new Measure(name, Numbers.of(visit.getLocale()), DECIMALS, false);
    }

    private SeasonMessages words() {
        return pages.words(SeasonMessages.class);
    }
}
