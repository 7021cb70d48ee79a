package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Plans against every other plan of small seasons, and against another solver where the question is linear. */
class OptimalPlanTest {
    private static final Effort SMALL = new Effort(60, 4, 4_000, 1);

    @Test
    void the_plan_of_a_small_season_is_the_best_of_all_plans() {
        int possible = 0;
        for (int seed = 0; seed < 200; seed++) {
            var season = new Herd(seed, 6, 5, 4, seed % 7).limited(3, 1 + seed % 4, seed % 3 > 0);
            var all = Herd.everyPlan(season);
            var planned = new SeasonPlanner(season, SMALL, Watch.NOBODY).plan();
            if (all.isEmpty()) {
                assertThat(planned).as("seed %d", seed).isInstanceOf(ImpossibleSeason.class);
                continue;
            }
            possible++;
            var plan = (SeasonPlan) planned;
            double best = all.stream()
                    .mapToDouble(sires -> Herd.meanKinship(season, sires))
                    .min()
                    .orElseThrow();
            assertThat(plan.after()).as("seed %d", seed).isCloseTo(best, within(1e-13));
            assertThat(plan.bound()).as("bound, seed %d", seed).isLessThanOrEqualTo(best);
            assertThat(Herd.keepsAll(season, plan.sires(season)))
                    .as("seed %d", seed)
                    .isTrue();
        }
        assertThat(possible).isGreaterThan(120);
    }

    @Test
    void among_plans_with_the_same_litters_for_each_animal_it_has_the_least_inbred_young() {
        for (int seed = 0; seed < 60; seed++) {
            var season = new Herd(seed, 4, 5, 4, 3).limited(3, 4, false);
            var plan = (SeasonPlan) new SeasonPlanner(season, SMALL, Watch.NOBODY).plan();
            int[] sires = plan.sires(season);
            double least = Herd.everyPlan(season).stream()
                    .filter(other -> littersOfEach(season, other).equals(littersOfEach(season, sires)))
                    .mapToDouble(other -> meanInbreeding(season, other))
                    .min()
                    .orElseThrow();
            assertThat(plan.leastInbred()).isTrue();
            assertThat(plan.meanInbreeding()).as("seed %d", seed).isCloseTo(least, within(1e-13));
        }
    }

    /** By animal, the sizes of its litters. */
    private static List<List<Double>> littersOfEach(Season season, int[] sires) {
        var sizes = new ArrayList<List<Double>>();
        for (int candidate = 0; candidate < season.females + season.males; candidate++) {
            sizes.add(new ArrayList<>());
        }
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] >= 0) {
                sizes.get(female).add(season.young[female]);
                sizes.get(season.females + sires[female]).add(season.young[female]);
            }
        }
        sizes.forEach(list -> list.sort(Comparator.naturalOrder()));
        return sizes;
    }

    private static double meanInbreeding(Season season, int[] sires) {
        double sum = 0;
        double young = 0;
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] >= 0) {
                sum += season.young[female] * season.inbreeding(new Pair(female, sires[female]));
                young += season.young[female];
            }
        }
        return young == 0 ? 0 : sum / young;
    }

    @Test
    void no_plan_dominates_a_point_of_the_curve() {
        int points = 0;
        for (int seed = 0; seed < 40; seed++) {
            var season = new Herd(seed, 4, 5, 4, 3).limited(3, 4, false);
            var planner = new SeasonPlanner(season, SMALL, Watch.NOBODY);
            var all = Herd.everyPlan(season);
            for (var point : planner.curve((SeasonPlan) planner.plan())) {
                points++;
                assertThat(all).as("seed %d, %s", seed, point).noneMatch(sires -> {
                    double lessKinship = point.meanKinship() - Herd.meanKinship(season, sires);
                    double lessInbred = point.meanInbreeding() - meanInbreeding(season, sires);
                    return Math.min(lessKinship, lessInbred) > -1e-12 && Math.max(lessKinship, lessInbred) > 1e-9;
                });
            }
        }
        assertThat(points).isGreaterThan(50);
    }

    /** Without kinship among candidates the sum is linear; CP-SAT of OR-tools solves that exactly in whole numbers. */
    @Test
    void where_the_question_is_linear_another_solver_agrees_to_the_last_digit() {
        Loader.loadNativeLibraries();
        for (int seed = 0; seed < 20; seed++) {
            var season = linear(seed);
            var plan = (SeasonPlan) new SeasonPlanner(season, new Effort(60, 3, 40_000, 1), Watch.NOBODY).plan();
            long best = best(season);
            long planned = 0;
            for (var litter : plan.litters()) {
                planned += whole(season, litter.pair().female(), litter.pair().male());
            }
            assertThat(planned).as("seed %d", seed).isEqualTo(best);
            if (!season.hasTravelLimits()) {
                assertThat(plan.gap()).as("seed %d", seed).isLessThan(2e-5);
            }
        }
    }

    private static final long UNITS = 1 << 20;

    private static Season linear(int seed) {
        var herd = new Herd(seed, 6, 14, 10, 5);
        var limited = herd.limited(3, 4, true);
        double[] toPool = new double[24];
        Arrays.setAll(toPool, candidate -> herd.random.nextInt((int) UNITS) / (double) UNITS);
        double[] young = new double[14];
        Arrays.fill(young, 2);
        return new Season(
                new Genes(40, .1, new double[24][24], toPool),
                14,
                limited.collection,
                new Season.Wishes(
                        young,
                        limited.allowed,
                        limited.littersOfMale,
                        new int[] {3, 2, 3},
                        seed % 2 == 0 ? new int[] {2, 1, 14} : new int[] {14, 14, 14},
                        5,
                        5,
                        List.of()));
    }

    private static long whole(Season season, int female, int male) {
        return Math.round((season.genes.toPool()[female] + season.genes.toPool()[season.females + male]) * UNITS);
    }

    private static long best(Season season) {
        var model = new CpModel();
        var bred = new BoolVar[season.females][season.males];
        var all = new ArrayList<BoolVar>();
        var weights = new ArrayList<Long>();
        for (int female = 0; female < season.females; female++) {
            for (int male = 0; male < season.males; male++) {
                bred[female][male] = model.newBoolVar("");
                if (!season.allowed[female].get(male)) {
                    model.addEquality(bred[female][male], 0);
                }
                all.add(bred[female][male]);
                weights.add(whole(season, female, male));
            }
            model.addLessOrEqual(LinearExpr.sum(bred[female]), 1);
        }
        for (int male = 0; male < season.males; male++) {
            var his = new BoolVar[season.females];
            for (int female = 0; female < season.females; female++) {
                his[female] = bred[female][male];
            }
            model.addLessOrEqual(LinearExpr.sum(his), Math.min(season.littersOfMale[male], season.females));
        }
        for (int at = 0; at < 3; at++) {
            var there = new ArrayList<BoolVar>();
            var travellers = new ArrayList<BoolVar>();
            for (int male = 0; male < season.males; male++) {
                var travels = model.newBoolVar("");
                for (int female = 0; female < season.females; female++) {
                    boolean hers = season.collection[female] == at;
                    if (hers) {
                        there.add(bred[female][male]);
                    } else if (season.collection[season.females + male] == at) {
                        model.addLessOrEqual(bred[female][male], travels);
                    }
                }
                if (season.collection[season.females + male] == at) {
                    travellers.add(travels);
                }
            }
            model.addLessOrEqual(LinearExpr.sum(there.toArray(new BoolVar[0])), season.littersOfCollection[at]);
            model.addLessOrEqual(LinearExpr.sum(travellers.toArray(new BoolVar[0])), season.travellersOfCollection[at]);
        }
        model.addEquality(LinearExpr.sum(all.toArray(new BoolVar[0])), season.least);
        model.minimize(LinearExpr.weightedSum(
                all.toArray(new BoolVar[0]),
                weights.stream().mapToLong(Long::longValue).toArray()));
        var solver = new CpSolver();
        solver.getParameters().setCatchSigintSignal(false).setNumWorkers(1);
        assertThat(solver.solve(model)).isEqualTo(CpSolverStatus.OPTIMAL);
        return Math.round(solver.objectiveValue());
    }
}
