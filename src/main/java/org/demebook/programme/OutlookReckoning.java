package org.demebook.programme;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.demebook.programme.OutlookView.AfterThisSeason;
import org.demebook.programme.OutlookView.Below;
import org.demebook.programme.OutlookView.Change;
import org.demebook.programme.OutlookView.LastChance;
import org.demebook.programme.OutlookView.Range;
import org.demebook.programme.OutlookView.SeasonAhead;
import org.demebook.programme.OutlookView.When;
import org.demebook.season.AfterLitters;
import org.demebook.season.Effort;
import org.demebook.season.Interval;
import org.demebook.season.Living;
import org.demebook.season.Outlook;
import org.demebook.season.SeasonsAhead;
import org.demebook.season.Spread;
import org.jspecify.annotations.Nullable;

/** Seasons ahead of a pool, and what would be otherwise. Some seconds at most: what is drawn, is drawn as often as its size allows. */
final class OutlookReckoning {
    private static final int LOCI = 50;
    private static final long MOVES = 10_000;

    private static final int MOST_DRAWS = 40;
    /** Fewer say too little of the ends. */
    private static final int LEAST_DRAWS = 20;
    /** Pairs that are looked at for each litter in all seasons, of all draws, and of what is expected. */
    private static final double MOST_WORK_OF_DRAWS = 4e7;

    private static final double MOST_WORK_EXPECTED = 3e7;

    private static final int MOST_DRAWS_OF_A_SEASON = 500;
    private static final int LEAST_DRAWS_OF_A_SEASON = 200;
    /** Animals of the pedigree, times draws. */
    private static final double MOST_WORK_OF_A_SEASON = 4e6;

    private final PoolToday pool;
    private final OutlookQuestion question;
    private final long seed;
    private final SeasonsAhead ahead;
    private final int seasons;
    private final Outlook expected;
    private final @Nullable Spread drawn;

    OutlookReckoning(PoolToday pool, OutlookQuestion question, long seed) {
        this.pool = pool;
        this.question = question;
        this.seed = seed;
        ahead = new SeasonsAhead(pool.pedigree, pool.living, pool.course, new Effort(1, 1, MOVES, seed));
        this.seasons = (int) Math.max(1, Math.min(question.seasons(), MOST_WORK_EXPECTED / workOfASeason()));
        this.expected = ahead.expected(seasons, pool.litters);
        int draws = draws();
        this.drawn = draws == 0 ? null : ahead.drawn(seasons, pool.litters, draws, seed);
    }

    private double workOfASeason() {
        double half = pool.living.size() / 2.0;
        return Math.max(1, half * half * pool.course.litters());
    }

    private int draws() {
        int draws = (int) Math.min(MOST_DRAWS, MOST_WORK_OF_DRAWS / (workOfASeason() * seasons));
        return draws < LEAST_DRAWS ? 0 : draws;
    }

    OutlookView view(List<LastChance> lastChances) {
        int females = question.founders() / 2;
        int males = question.founders() - females;
        var founders = ahead.withFounders(females, males).expected(seasons, pool.litters);
        var longer = ahead.withLongerGenerations(1).expected(seasons, pool.litters);
        return new OutlookView(
                summary(),
                seasons(),
                afterThisSeason(),
                below(),
                change(
                        question.founders() == 1
                                ? "One unrelated male founder joins today."
                                : "%d unrelated founders join today, %d of them females."
                                        .formatted(question.founders(), females),
                        founders),
                change("Animals mature a season later, and stay a season longer; as many fewer litters.", longer),
                lastChances,
                assumptions());
    }

    private List<String> assumptions() {
        var assumptions = new ArrayList<>(pool.assumptions());
        if (seasons < question.seasons()) {
            assumptions.add("Of so many animals no more than %d seasons are looked at.".formatted(seasons));
        }
        if (drawn == null) {
            assumptions.add("Of so many animals no litters are drawn by lot but those of this season.");
        }
        return assumptions;
    }

    private List<SeasonAhead> seasons() {
        var seasons = new ArrayList<SeasonAhead>();
        for (var season : expected.seasons()) {
            seasons.add(new SeasonAhead(
                    season.season(),
                    season.season() * question.yearsBetween(),
                    season.animals(),
                    season.litters(),
                    season.geneDiversity(),
                    drawn == null ? null : range(drawn.seasons().get(season.season()))));
        }
        return seasons;
    }

    private static Range range(Interval interval) {
        return new Range(interval.mean(), interval.low(), interval.high());
    }

    private AfterThisSeason afterThisSeason() {
        int draws = (int) Math.max(
                LEAST_DRAWS_OF_A_SEASON,
                Math.min(MOST_DRAWS_OF_A_SEASON, MOST_WORK_OF_A_SEASON / pool.pedigree.size()));
        int[] staying =
                pool.living.stream().filter(Living::stays).mapToInt(Living::row).toArray();
        var after = AfterLitters.drawn(pool.pedigree, staying, pool.litters, draws, LOCI, seed);
        return new AfterThisSeason(range(after.geneDiversity()), range(after.ofGenes()), LOCI);
    }

    private @Nullable Below below() {
        var target = question.target();
        return target == null
                ? null
                : new Below(
                        target,
                        when(expected.below(target)),
                        drawn == null ? null : when(drawn.below(target)),
                        drawn == null ? null : when(drawn.soonestBelow(target)),
                        drawn == null ? null : when(drawn.latestBelow(target)));
    }

    private static @Nullable When when(Optional<Outlook.Until> until) {
        return until.map(passed -> new When(passed.years(), passed.beyond())).orElse(null);
    }

    private Change change(String what, Outlook otherwise) {
        double diversity = otherwise.last().geneDiversity();
        return new Change(
                what,
                diversity,
                diversity - expected.last().geneDiversity(),
                question.target() == null ? null : when(otherwise.below(question.target())));
    }

    private String summary() {
        var last = expected.last();
        var years = PoolToday.count(last.season() * question.yearsBetween(), "year");
        if (last.animals() == 0) {
            return "If it goes on like this, nobody is left in %s.".formatted(years);
        }
        var now = PlanViews.figure(expected.seasons().get(0).geneDiversity());
        var told = drawn == null
                ? "In %s gene diversity is about %s, now %s."
                        .formatted(years, PlanViews.figure(last.geneDiversity()), now)
                : "In %s gene diversity is about %s (%s to %s in nine of ten courses), now %s."
                        .formatted(
                                years,
                                PlanViews.figure(end().mean()),
                                PlanViews.figure(end().low()),
                                PlanViews.figure(end().high()),
                                now);
        return question.target() == null ? told : told + " " + whenBelow(question.target());
    }

    private Interval end() {
        var seasons = Objects.requireNonNull(drawn).seasons();
        return seasons.get(seasons.size() - 1);
    }

    private String whenBelow(double target) {
        var when = when(drawn == null ? expected.below(target) : drawn.below(target));
        if (when == null) {
            return "It is not seen to fall below %s.".formatted(target);
        }
        return when.years() == 0
                ? "It is below %s today.".formatted(target)
                : "It falls below %s in about %s%s."
                        .formatted(
                                target,
                                PoolToday.count(Math.max(1, Math.round(when.years())), "year"),
                                when.guessed() ? ", if it goes on falling as in the last of them" : "");
    }
}
