package org.demebook.season;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Optional;
import java.util.stream.IntStream;

/** Plans that keep every constraint, made in a network where that is enough, and by an integer program where it is not. */
final class Plans {
    private static final int BITS = 40;

    private Plans() {}

    /** Whether the season has a plan at all. */
    static boolean isPossible(Season season) {
        return new Network(season).isPossible()
                && (!season.hasTravelLimits()
                        || cheapest(season, (female, male) -> season.isAcross(female, male) ? 1 : 0)
                                .isPresent());
    }

    /**
     * A plan like another one, with as many of its pairs as the constraints leave.
     *
     * @param otherwise what other pairs cost
     * @return nothing if the season has no plan
     */
    static Optional<int[]> near(Season season, int[] plan, Network.Cost otherwise) {
        if (new Draft(season, plan, 0).keepsLimits() && keepsPairs(season, plan)) {
            return Optional.of(plan.clone());
        }
        double large = 1;
        for (int female = 0; female < season.females; female++) {
            for (int male = 0; male < season.males; male++) {
                large = Math.max(large, Math.abs(otherwise.of(female, male)));
            }
        }
        double kept = -3 * large * season.females;
        return cheapest(season, (female, male) -> plan[female] == male ? kept : otherwise.of(female, male));
    }

    private static boolean keepsPairs(Season season, int[] plan) {
        return IntStream.range(0, plan.length)
                        .allMatch(female -> plan[female] == Season.NONE || season.isOpen(female, plan[female]))
                && season.locked.stream().allMatch(pair -> plan[pair.female()] == pair.male());
    }

    private static Optional<int[]> cheapest(Season season, Network.Cost cost) {
        var network = new Network(season);
        if (!network.isPossible()) {
            return Optional.empty();
        }
        int[] sires = network.cheapest(cost, BITS).sires();
        return new Draft(season, sires, 0).keepsLimits()
                ? Optional.of(sires)
                : new Program(season).cheapest(cost).map(Program.Solution::sires);
    }

    /**
     * Of all plans in which every animal has the same litters of each size, that with the least inbreeding of the young.
     * Mean kinship after the season is the same in all of them.
     */
    static Program.Solution leastInbred(Season season, int[] plan) {
        int[] sires = new int[season.females];
        Arrays.fill(sires, Season.NONE);
        double[] sizes = IntStream.range(0, season.females)
                .filter(female -> plan[female] != Season.NONE)
                .mapToDouble(female -> season.young[female])
                .distinct()
                .toArray();
        for (double size : sizes) {
            var alike = new BitSet();
            int[] ofMale = new int[season.males];
            for (int female = 0; female < season.females; female++) {
                if (plan[female] != Season.NONE && season.young[female] == size) {
                    alike.set(female);
                    ofMale[plan[female]]++;
                }
            }
            var part = season.ofThese(alike, ofMale, alike.cardinality());
            int[] best = new Network(part).cheapest(inbreeding(season), BITS).sires();
            alike.stream().forEach(female -> sires[female] = best[female]);
        }
        return new Draft(season, sires, 0).keepsLimits()
                ? new Program.Solution(sires, true)
                : new Program(season)
                        .withNumbersOf(plan)
                        .from(plan)
                        .cheapest((female, male) ->
                                season.young[female] * inbreeding(season).of(female, male))
                        .orElseThrow();
    }

    private static Network.Cost inbreeding(Season season) {
        return (female, male) -> season.genes.kinship()[female][season.females + male];
    }
}
