package org.demebook.season;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Plans that keep every constraint, made in a network where that is enough, and by an integer program where it is not. */
final class Plans {
    private static final int BITS = 40;

    private Plans() {}

    /** Whether the season has a plan at all. */
    static boolean isPossible(Season season) {
        return isPossibleByFlow(season)
                .orElseGet(() -> new Program(season).anyPlan().isPresent());
    }

    /** The same if networks tell; nothing where it takes an integer program, a hundred times as slow. */
    static Optional<Boolean> isPossibleByFlow(Season season) {
        if (!new Network(season).isPossible()) {
            return Optional.of(false);
        }
        if (!season.hasTravelLimits()) {
            return Optional.of(true);
        }
        if (!Hubs.leaveEnough(season)) {
            return Optional.of(false);
        }
        return byFlow(season, (female, male) -> season.isAcross(female, male) ? 1 : 0, 1)
                .map(plan -> true);
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

    /** Settled pairs, and then always the litter with which mean kinship is least, as long as limits leave one. */
    static int[] litterByLitter(Season season) {
        int[] settled = new int[season.females];
        Arrays.fill(settled, Season.NONE);
        season.locked.forEach(pair -> settled[pair.female()] = pair.male());
        return filled(season, settled, Math.min(season.most, season.females));
    }

    /**
     * What a plan still has of open pairs, filled up litter by litter to as many as it had; empty where limits do not leave as many, or a
     * settled pair is missing. Much cheaper than {@link #near} where little is to be mended.
     */
    static Optional<int[]> mended(Season season, int[] plan) {
        int[] left = plan.clone();
        int litters = 0;
        for (int female = 0; female < left.length; female++) {
            litters += left[female] == Season.NONE ? 0 : 1;
            if (left[female] != Season.NONE && !season.isOpen(female, left[female])) {
                left[female] = Season.NONE;
            }
        }
        int[] mended = filled(season, left, Math.min(season.most, litters));
        return new Draft(season, mended, 0).keepsLimits() && keepsPairs(season, mended)
                ? Optional.of(mended)
                : Optional.empty();
    }

    private static int[] filled(Season season, int[] from, int litters) {
        var draft = new Draft(season, from, 0);
        while (draft.litters() < litters) {
            var next = bestLitter(season, draft);
            if (next.isEmpty()) {
                break;
            }
            draft.begin();
            draft.shift(next.get().female(), next.get().male(), 1);
            draft.proposed();
            draft.take();
            draft.sires[next.get().female()] = next.get().male();
        }
        return draft.sires;
    }

    private static Optional<Pair> bestLitter(Season season, Draft draft) {
        @Nullable Pair best = null;
        // where the number is free, only litters that help
        double least = draft.litters() < season.least ? Double.POSITIVE_INFINITY : draft.meanKinship();
        for (int female = 0; female < season.females; female++) {
            for (int male = 0; male < season.males && draft.sires[female] == Season.NONE; male++) {
                if (season.isOpen(female, male)) {
                    draft.begin();
                    draft.shift(female, male, 1);
                    double after = draft.isWithin() ? draft.proposed() : Double.POSITIVE_INFINITY;
                    if (after < least) {
                        least = after;
                        best = new Pair(female, male);
                    }
                    draft.begin();
                    draft.shift(female, male, -1);
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** Cheapest of all where that is a flow; where it is not, cheap, and of all only if nothing simpler was found. */
    static Optional<int[]> cheapest(Season season, Network.Cost cost) {
        return new Network(season).isPossible()
                ? byFlow(season, cost, BITS)
                        .or(() -> new Program(season).cheapest(cost).map(Program.Solution::sires))
                : Optional.empty();
    }

    /** A plan that a network finds without knowing of all travellers. */
    private static Optional<int[]> byFlow(Season season, Network.Cost cost, int bits) {
        int[] sires = new Network(season).cheapest(cost, bits).sires();
        if (new Draft(season, sires, 0).keepsLimits()) {
            return Optional.of(sires);
        }
        for (int[] worth : new int[][] {littersAbroad(season, sires), mostAbroad(season)}) {
            var narrow = new Network(season.inWhichTravel(first(season, worth)));
            if (narrow.isPossible()) {
                int[] fewer = narrow.cheapest(cost, bits).sires();
                if (new Draft(season, fewer, 0).keepsLimits()) {
                    return Optional.of(fewer);
                }
            }
        }
        return Optional.empty();
    }

    /** Of each collection as many males as may travel, those first who are worth most. */
    private static BitSet first(Season season, int[] worth) {
        for (var pair : season.locked) {
            if (season.isAcross(pair)) {
                // who travels to a settled litter travels anyway
                worth[pair.male()] += season.females;
            }
        }
        int[] left = season.travellersOfCollection.clone();
        var travel = new BitSet();
        IntStream.range(0, season.males)
                .boxed()
                .sorted(Comparator.comparingInt(male -> -worth[male]))
                .filter(male -> left[season.collection[season.females + male]]-- > 0)
                .forEach(travel::set);
        return travel;
    }

    /** By male, his litters elsewhere in a plan. */
    private static int[] littersAbroad(Season season, int[] sires) {
        int[] abroad = new int[season.males];
        for (int female = 0; female < sires.length; female++) {
            if (sires[female] != Season.NONE && season.isAcross(female, sires[female])) {
                abroad[sires[female]]++;
            }
        }
        return abroad;
    }

    /** By male, the litters that he alone could have elsewhere. */
    private static int[] mostAbroad(Season season) {
        int[] most = new int[season.males];
        for (int male = 0; male < season.males; male++) {
            int he = male;
            long abroad = IntStream.range(0, season.females)
                    .filter(female -> season.isOpen(female, he) && season.isAcross(female, he))
                    .count();
            most[male] = (int) Math.min(abroad, season.littersOfMale[male]);
        }
        return most;
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
                : new Program(ofThePlan(season, plan))
                        .withNumbersOf(plan)
                        .from(plan)
                        .cheapest((female, male) ->
                                season.young[female] * inbreeding(season).of(female, male))
                        .orElseThrow();
    }

    /** The season with nobody but those who have litters in a plan. */
    private static Season ofThePlan(Season season, int[] plan) {
        var bred = new BitSet();
        int[] ofMale = new int[season.males];
        for (int female = 0; female < season.females; female++) {
            if (plan[female] != Season.NONE) {
                bred.set(female);
                ofMale[plan[female]]++;
            }
        }
        return season.ofThese(bred, ofMale, bred.cardinality());
    }

    private static Network.Cost inbreeding(Season season) {
        return (female, male) -> season.genes.kinship()[female][season.females + male];
    }
}
