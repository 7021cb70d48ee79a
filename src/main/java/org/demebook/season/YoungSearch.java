package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Chooses pairs and numbers of young in turn: a plan for given numbers, numbers for that plan, until neither helps. What a
 * female without a litter would keep has to be assumed; both assumptions are tried in every round.
 */
final class YoungSearch {
    private static final int ROUNDS = 8;
    private static final double HELPS = 1e-15;
    /** Females, up to whom every neighbour of a plan is looked at. */
    private static final int SMALL = 12;

    private static final int ALL = 1 << 20;
    private static final int FEW = 10;
    private static final int MOVES = 200;
    private static final double NEAR = .1;

    private final Season season;
    /** With no more litters than young are wanted. */
    private final Season narrow;

    private final int[] most;
    private final YoungToKeep wanted;
    private final Effort effort;
    private final Watch watch;
    private boolean stopped;

    /** A plan, by female her litter's young (0 without one), and what comes of it. */
    private record Numbered(int[] sires, int[] young, double meanKinship) {}

    YoungSearch(Season season, YoungToKeep wanted, Effort effort, Watch watch) {
        if (wanted.most().size() != season.females) {
            throw new IllegalArgumentException(
                    wanted.most().size() + " numbers of young for " + season.females + " females");
        }
        this.season = season;
        this.wanted = wanted;
        this.effort = effort;
        this.watch = progress -> {
            stopped = stopped || !watch.goOn(progress);
            return !stopped;
        };
        most = wanted.most().stream().mapToInt(Integer::intValue).toArray();
        narrow = wanted.total().isPresent()
                ? season.withLittersAtMost(wanted.total().getAsInt())
                : season;
    }

    /** Of a season that has a plan. */
    YoungPlan run() {
        int[] widest = widest();
        @Nullable Numbered best = null;
        for (double[] young : starts()) {
            if (best == null || !stopped) {
                var found = from(young, widest);
                if (isSmall()) {
                    found = amongNeighbours(found);
                }
                best = best == null || found.meanKinship() < best.meanKinship() ? found : best;
            }
        }
        return told(amongNeighbours(Objects.requireNonNull(best)));
    }

    private boolean isSmall() {
        return most.length <= SMALL;
    }

    /** Goes over to a neighbour, numbered anew, that is better, until none of those looked at is. */
    private Numbered amongNeighbours(Numbered from) {
        var now = from;
        boolean better = true;
        for (int move = 0; better && move < MOVES && !stopped; move++) {
            better = false;
            double[] young = likeTheOthers(now);
            for (int[] sires : YoungNeighbours.of(narrow.withYoung(young), now.sires(), isSmall() ? ALL : FEW)) {
                var then = numbered(sires, young);
                if (then.isPresent() && then.get().meanKinship() < now.meanKinship() - HELPS) {
                    now = then.get();
                    better = true;
                    break;
                }
            }
        }
        return now;
    }

    /** The plan with the most young, if every litter keeps as many as it may. */
    private int[] widest() {
        int fewest = Math.max(season.least, season.locked.size());
        int total = wanted.total().orElse(Integer.MAX_VALUE);
        int[] widest = Plans.isPossible(narrow)
                ? Plans.cheapest(narrow, (female, male) -> -most[female]).orElseThrow()
                : new int[0];
        int highest = IntStream.range(0, widest.length)
                .filter(female -> widest[female] != Season.NONE)
                .map(female -> most[female])
                .sum();
        if (total < fewest || wanted.total().isPresent() && total > highest) {
            throw new IllegalArgumentException(
                    "%d young in all cannot be kept: %d litters at least, and %d young at most"
                            .formatted(total, fewest, highest));
        }
        return widest;
    }

    /** The season's own numbers, the fewest, the most, and where a total is wanted, as many for each. */
    private List<double[]> starts() {
        var starts = new ArrayList<double[]>();
        starts.add(whole(season.young));
        starts.add(whole(new double[season.females]));
        starts.add(IntStream.of(most).asDoubleStream().toArray());
        if (wanted.total().isPresent() && season.least > 0) {
            double[] even = new double[season.females];
            Arrays.fill(even, (double) wanted.total().getAsInt() / season.least);
            starts.add(whole(even));
        }
        return starts;
    }

    private double[] whole(double[] young) {
        return IntStream.range(0, young.length)
                .mapToDouble(female -> Math.max(1, Math.min(most[female], Math.rint(young[female]))))
                .toArray();
    }

    private Numbered from(double[] young, int[] widest) {
        var given = narrow.withYoung(young);
        int[] made = new SeasonPlanner(given, effort, watch).kept(Plans.litterByLitter(given));
        int[] found = searched(given, made, effort.starts());
        var now = numbered(found, young).or(() -> numbered(widest, young)).orElseThrow();
        for (int round = 0; round < ROUNDS && !stopped; round++) {
            double before = now.meanKinship();
            for (double[] assumed : List.of(likeTheOthers(now), asAnAddition(now))) {
                var then = numbered(searched(narrow.withYoung(assumed), now.sires(), 1), assumed);
                if (then.isPresent() && then.get().meanKinship() < now.meanKinship()) {
                    now = then.get();
                }
            }
            if (now.meanKinship() >= before - HELPS) {
                break;
            }
        }
        return now;
    }

    private int[] searched(Season given, int[] from, int starts) {
        int[] found = from;
        for (int start = 0; start < starts && !stopped; start++) {
            found = new Search(given, found, 0, 0, effort.seed() + start, watch)
                    .run(effort.moves(), start == 0 ? NEAR : 1);
        }
        return found;
    }

    /** The better of the numbers chosen for a plan and those it had. Nothing if it cannot have the wanted total. */
    private Optional<Numbered> numbered(int[] sires, double[] young) {
        int[] had = new int[sires.length];
        for (int female = 0; female < sires.length; female++) {
            had[female] = sires[female] == Season.NONE ? 0 : (int) young[female];
        }
        var chosen = YoungNumbers.of(season, sires, most, wanted.total()).map(numbers -> judged(sires, numbers));
        boolean fits = wanted.total().isEmpty()
                || wanted.total().getAsInt() == IntStream.of(had).sum();
        return chosen.map(numbers -> {
            var before = judged(sires, had);
            return fits && before.meanKinship() < numbers.meanKinship() ? before : numbers;
        });
    }

    private Numbered judged(int[] sires, int[] young) {
        return new Numbered(sires, young, new Draft(season.withYoung(atLeastOne(young)), sires, 0).meanKinship());
    }

    private static double[] atLeastOne(int[] young) {
        return IntStream.of(young).mapToDouble(number -> Math.max(1, number)).toArray();
    }

    /** Females without a litter would keep what the others keep on average. */
    private double[] likeTheOthers(Numbered now) {
        double mean =
                IntStream.of(now.young()).filter(young -> young > 0).average().orElse(1);
        double[] assumed = new double[most.length];
        Arrays.setAll(assumed, female -> now.young()[female] > 0 ? now.young()[female] : mean);
        return whole(assumed);
    }

    /** Females without a litter would keep what would be best if they had one beside the others. */
    private double[] asAnAddition(Numbered now) {
        double[] assumed = atLeastOne(now.young());
        double[] u = Draft.halves(season.withYoung(assumed), now.sires());
        double[] related = season.genes.related(u);
        double sum = season.genes.sum(u, related);
        double animals = season.genes.size() + Arrays.stream(u).sum();
        for (int female = 0; female < assumed.length; female++) {
            double least = Double.POSITIVE_INFINITY;
            for (int male = 0; male < season.males && now.young()[female] == 0; male++) {
                for (int young = 1; young <= most[female] && season.isOpen(female, male); young++) {
                    double after =
                            (sum + added(female, male, young, related)) / ((animals + young) * (animals + young));
                    if (after < least) {
                        least = after;
                        assumed[female] = young;
                    }
                }
            }
        }
        return assumed;
    }

    private double added(int female, int male, int young, double[] related) {
        int sire = season.females + male;
        double[][] kinship = season.genes.kinship();
        double half = young / 2.0;
        return half * (season.genes.linear(female) + season.genes.linear(sire))
                + 2 * half * (related[female] + related[sire])
                + half * half * (kinship[female][female] + kinship[sire][sire] + 2 * kinship[female][sire]);
    }

    /** With the bound for its numbers; where the total is free, and a better plan is found for them, numbered anew. */
    private YoungPlan told(Numbered found) {
        var now = found;
        for (int round = 0; true; round++) {
            double[] young = likeTheOthers(now);
            var given = season.withYoung(young);
            var planner = new SeasonPlanner(given, effort, watch);
            if (wanted.total().isPresent()) {
                return new YoungPlan(given, planner.bounded(now.sires()));
            }
            var plan = planner.plan(List.of(now.sires()));
            var then = numbered(plan.sires(season), young).orElseThrow();
            if (round == ROUNDS || stopped || then.meanKinship() >= plan.after() - HELPS) {
                return new YoungPlan(given, plan);
            }
            now = then;
        }
    }
}
