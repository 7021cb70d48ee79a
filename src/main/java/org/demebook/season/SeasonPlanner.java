package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Plans a season: most gene diversity first, then least inbreeding at the same numbers for each animal.
 *
 * <p>The same season, effort and seed give the same plan. Method, sources and checks: docs/methods/season.md.
 */
public final class SeasonPlanner {
    /** What mean inbreeding may weigh beside mean kinship on the curve. */
    private static final double[] WEIGHTS = {.01, .03, .1, .3, 1, 3};

    /** Females, up to whom all plans that might be better are gone through; for each step of the bound so many of them. */
    private static final int SMALL = 16;

    private static final long PROOF_STEPS = 700;

    /** So many changes are all tried in the end, for each refusal. */
    private static final long FEW_CHANGES = 200_000;

    static final double NEAR = .1;
    private static final double SAME = 1e-12;
    /** What inbreeding weighs in the first stage: it decides among plans of the same mean kinship. */
    static final double TIE = 1e-11;

    private final Season season;
    private final Effort effort;
    private final Watch watch;

    public SeasonPlanner(Season season, Effort effort, Watch watch) {
        this.season = season;
        this.effort = effort;
        this.watch = watch;
    }

    /**
     * The best plan that the effort finds, with the bound.
     *
     * <p>Cost: docs/performance.md. Memory: candidates squared.
     *
     * @throws ArithmeticException if a season with limits on travellers is not found possible or impossible within the work
     *     that the integer program may do
     */
    public Planned plan() {
        return Plans.isPossible(season) ? plan(List.of()) : Conflicts.of(season, watch);
    }

    /** Of a possible season, no worse than plans that are known. */
    SeasonPlan plan(List<int[]> known) {
        var lower = new LowerBound(season, new Network(season));
        boolean whole = lower.run(effort.boundSteps(), watch);
        var starts = new ArrayList<>(known);
        starts.addAll(starts(lower));
        int[] best = starts.stream()
                .min(Comparator.comparingDouble(this::firstStage))
                .orElseThrow();
        for (int start = 0; start < effort.starts() && whole; start++) {
            int[] from = starts.get(start % starts.size());
            var search = new Search(
                    season, from, TIE, lower.meanKinship(), effort.seed() + start, after(start, meanKinship(best)));
            int[] found = search.run(effort.moves(), start == 0 ? NEAR : 1);
            if (firstStage(found) < firstStage(best)) {
                best = found;
            }
            whole = !search.stopped();
        }
        if (!whole || season.females > SMALL) {
            return told(best, lower.meanKinship(), whole);
        }
        var proof = new Proof(season, best, lower.meanKinship(), watch);
        double raised = proof.raise(PROOF_STEPS * effort.boundSteps());
        return told(proof.best(), raised, !proof.stopped());
    }

    /** A plan that was found elsewhere, with its bound. */
    SeasonPlan bounded(int[] plan) {
        var lower = new LowerBound(season, new Network(season));
        boolean whole = lower.run(effort.boundSteps(), watch);
        return told(plan, lower.meanKinship(), whole);
    }

    /**
     * The best plan that is found where the young of each litter that stay in the pool are chosen too. The numbers that the season
     * has of its own are a start, rounded; with them alone the plan is not better. That there is no better choice of numbers
     * is not proven; the bound is that of the numbers chosen.
     *
     * <p>Cost: that of {@link #plan} and some ten to fifty searches more. The watch is told of each from 0 on.
     *
     * @throws IllegalArgumentException if a total is wanted that no plan can have; with limits on travellers, that none
     *     was found to have
     * @throws ArithmeticException as {@link #plan}
     */
    public YoungPlan plan(YoungToKeep wanted) {
        var search = new YoungSearch(season, wanted, effort, watch);
        return Plans.isPossible(season) ? search.run() : new YoungPlan(season, Conflicts.of(season, watch));
    }

    /** The watch of one start, told of all. */
    private Watch after(int starts, double best) {
        long all = effort.starts() * effort.moves();
        return progress -> watch.goOn(new Progress(
                starts * effort.moves() + progress.done(),
                all,
                Math.min(best, progress.meanKinship()),
                progress.bound()));
    }

    /** A plan made litter by litter, then those from which the bound was mixed, best first; all keep all constraints. */
    private List<int[]> starts(LowerBound lower) {
        var starts = new ArrayList<int[]>();
        starts.add(kept(Plans.litterByLitter(season)));
        lower.plans().stream()
                .limit(2L * effort.starts())
                .map(this::kept)
                .sorted(Comparator.comparingDouble(this::meanKinship))
                .limit(effort.starts())
                .forEach(starts::add);
        return starts;
    }

    int[] kept(int[] plan) {
        return Plans.near(season, plan, gradient(plan)).orElseThrow();
    }

    private double firstStage(int[] plan) {
        return new Draft(season, plan, TIE).objective();
    }

    private double meanKinship(int[] plan) {
        return new Draft(season, plan, 0).meanKinship();
    }

    /** What a first little bit of a litter would add to the sum of kinships. */
    private Network.Cost gradient(int[] plan) {
        double[] related = season.genes.related(Draft.halves(season, plan));
        return (female, male) ->
                season.young[female] / 2 * (marginal(related, female) + marginal(related, season.females + male));
    }

    private double marginal(double[] related, int candidate) {
        return season.genes.linear(candidate) + 2 * related[candidate];
    }

    /**
     * The figures of pairs that were chosen before or elsewhere, without any search.
     *
     * @throws IllegalArgumentException if a pair is not allowed, or a female stands in two
     */
    public Evaluation evaluate(List<Pair> pairs) {
        int[] sires = new int[season.females];
        Arrays.fill(sires, Season.NONE);
        for (var pair : pairs) {
            if (!season.has(pair) || !season.isAllowed(pair)) {
                throw new IllegalArgumentException(pair + " is not allowed in this season");
            }
            if (sires[pair.female()] != Season.NONE) {
                throw new IllegalArgumentException("female " + pair.female() + " stands in two pairs");
            }
            sires[pair.female()] = pair.male();
        }
        var draft = new Draft(season, sires, 0);
        return new Evaluation(
                litters(draft),
                season.genes.meanKinship(),
                draft.meanKinship(),
                draft.meanInbreeding(),
                draft.keepsLimits() && season.locked.stream().allMatch(pair -> sires[pair.female()] == pair.male()));
    }

    private List<SeasonPlan.Litter> litters(Draft draft) {
        return pairs(draft.sires).stream().map(pair -> litter(draft, pair)).toList();
    }

    private SeasonPlan told(int[] plan, double bound, boolean whole) {
        var solution = Plans.leastInbred(season, plan);
        var draft = new Draft(season, solution.sires(), 0);
        return new SeasonPlan(
                litters(draft),
                season.genes.meanKinship(),
                draft.meanKinship(),
                meanKinship(settled()),
                Math.min(bound, draft.meanKinship()),
                draft.meanInbreeding(),
                solution.proven(),
                whole);
    }

    private SeasonPlan.Litter litter(Draft draft, Pair pair) {
        draft.begin();
        draft.shift(pair.female(), pair.male(), -1);
        double without = draft.proposed();
        draft.begin();
        draft.shift(pair.female(), pair.male(), 1);
        return new SeasonPlan.Litter(
                pair,
                season.young[pair.female()],
                season.inbreeding(pair),
                without - draft.meanKinship(),
                season.isLocked(pair),
                season.isAcross(pair));
    }

    private int[] settled() {
        int[] sires = new int[season.females];
        Arrays.fill(sires, Season.NONE);
        season.locked.forEach(pair -> sires[pair.female()] = pair.male());
        return sires;
    }

    /**
     * From the plan to plans that give up gene diversity for less inbred young, by ascending mean kinship; none of them is
     * dominated by another. Cost: a search for each of six weights.
     */
    public List<TradeOff> curve(SeasonPlan plan) {
        var points = new ArrayList<TradeOff>();
        int[] from = plan.sires(season);
        points.add(point(from));
        for (double weight : WEIGHTS) {
            var search = new Search(season, from, weight, plan.bound(), effort.seed(), watch);
            from = search.run(effort.moves(), NEAR);
            points.add(point(Plans.leastInbred(season, from).sires()));
            if (search.stopped()) {
                break;
            }
        }
        points.sort(Comparator.comparingDouble(TradeOff::meanKinship).thenComparingDouble(TradeOff::meanInbreeding));
        var kept = new ArrayList<TradeOff>();
        for (var point : points) {
            if (kept.isEmpty()
                    || point.meanInbreeding() < kept.get(kept.size() - 1).meanInbreeding() - SAME) {
                kept.add(point);
            }
        }
        return List.copyOf(kept);
    }

    private TradeOff point(int[] plan) {
        var draft = new Draft(season, plan, 0);
        return new TradeOff(draft.meanKinship(), draft.meanInbreeding(), pairs(plan));
    }

    private static List<Pair> pairs(int[] plan) {
        return IntStream.range(0, plan.length)
                .filter(female -> plan[female] != Season.NONE)
                .mapToObj(female -> new Pair(female, plan[female]))
                .toList();
    }

    /**
     * How many young of a litter should stay: by number from 0 on, the gene diversity after the season if so many of them
     * count and the rest of the plan stays.
     *
     * @param litter of the plan
     * @param most young to look at, 0 or more
     */
    public double[] keeping(SeasonPlan plan, Pair litter, int most) {
        int[] sires = plan.sires(season);
        if (sires[litter.female()] != litter.male()) {
            throw new IllegalArgumentException(litter + " is no litter of this plan");
        }
        double[] diversity = new double[most + 1];
        for (int young = 1; young <= most; young++) {
            diversity[young] = 1 - new Draft(season.withYoung(litter.female(), young), sires, 0).meanKinship();
        }
        sires[litter.female()] = Season.NONE;
        diversity[0] = 1 - meanKinship(sires);
        return diversity;
    }

    /** For every litter of the plan what it costs if the pair, the female or the male is refused; three searches a litter. */
    public List<Refusal> refusals(SeasonPlan plan) {
        var refusals = new ArrayList<Refusal>();
        for (var litter : plan.litters()) {
            for (var what : Refusal.What.values()) {
                refusals.add(refusal(plan, litter.pair(), what));
            }
        }
        return List.copyOf(refusals);
    }

    /** What it costs if that is refused, searched for with the effort's starts and moves. */
    public Refusal refusal(SeasonPlan plan, Pair pair, Refusal.What what) {
        var refused = season.refused(pairsOf(pair, what));
        int[] before = plan.sires(season);
        var mended = Plans.mended(refused, before);
        if (mended.isEmpty() && !Plans.isPossible(refused)) {
            return new Refusal(pair, what, OptionalDouble.empty(), List.of());
        }
        int[] after = mended.orElseGet(
                () -> Plans.near(refused, before, gradient(before)).orElseThrow());
        boolean stopped = false;
        boolean thorough = (long) plan.litters().size() * season.females * season.males <= FEW_CHANGES;
        for (int start = 0; start < effort.starts() && !stopped; start++) {
            var search = new Search(refused, after, 0, plan.bound(), effort.seed() + start, watch);
            after = thorough ? search.run(effort.moves(), 1) : search.roam(effort.moves(), 1);
            stopped = search.stopped();
        }
        int[] found = after;
        var instead = pairs(found).stream()
                .filter(now -> before[now.female()] != now.male())
                .toList();
        return new Refusal(pair, what, OptionalDouble.of(meanKinship(found) - plan.after()), instead);
    }

    private List<Pair> pairsOf(Pair pair, Refusal.What what) {
        return switch (what) {
            case THIS_PAIR -> List.of(pair);
            case ANY_LITTER_OF_HERS ->
                IntStream.range(0, season.males)
                        .mapToObj(male -> new Pair(pair.female(), male))
                        .toList();
            case ANY_LITTER_OF_HIS ->
                IntStream.range(0, season.females)
                        .mapToObj(female -> new Pair(female, pair.male()))
                        .toList();
        };
    }
}
