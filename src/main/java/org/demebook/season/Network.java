package org.demebook.season;

import com.google.ortools.Loader;
import com.google.ortools.graph.MaxFlow;
import com.google.ortools.graph.MinCostFlow;
import com.google.ortools.graph.MinCostFlowBase;
import java.util.Arrays;

/**
 * A season as a flow of litters: from a source through the collection of the dam, the dam, and the sire to a sink.
 *
 * <p>Settled pairs are taken off first. How many males of a collection travel does not fit into a network and is left out
 * unless nobody may, so the network allows every plan of the season, and perhaps more.
 */
final class Network {
    static {
        Loader.loadNativeLibraries();
    }

    /**
     * The cheapest choice of pairs.
     *
     * @param sires by female, {@link Season#NONE} without litter; settled pairs included
     * @param atLeast no choice that the network allows costs less: rounding of costs is taken off
     */
    record Cheapest(int[] sires, double atLeast) {}

    /** What a litter of the two costs. */
    @FunctionalInterface
    interface Cost {
        double of(int female, int male);
    }

    private final Season season;
    private final int[] settled;
    private final int[] leftOfMale;
    private final int[] leftOfCollection;
    private int least;
    private int most;
    private boolean contradictory;

    Network(Season season) {
        this.season = season;
        settled = new int[season.females];
        Arrays.fill(settled, Season.NONE);
        leftOfMale = atMost(season.littersOfMale, season.females);
        leftOfCollection = atMost(season.littersOfCollection, season.females);
        least = season.least;
        most = Math.min(season.most, season.females);
        for (var pair : season.locked) {
            contradictory |= settled[pair.female()] != Season.NONE || !season.isOpen(pair.female(), pair.male());
            settled[pair.female()] = pair.male();
            contradictory |= --leftOfMale[pair.male()] < 0;
            contradictory |= --leftOfCollection[season.collection[pair.female()]] < 0;
            least--;
            most--;
        }
        least = Math.max(least, 0);
        contradictory |= most < least;
    }

    private static int[] atMost(int[] limits, int most) {
        return Arrays.stream(limits).map(limit -> Math.min(limit, most)).toArray();
    }

    /** Whether a plan exists, travellers aside. */
    boolean isPossible() {
        return !contradictory && (least == 0 || most() >= least);
    }

    private long most() {
        var flow = new MaxFlow();
        try {
            arcs((from, to, capacity, female, male) -> flow.addArcWithCapacity(from, to, capacity));
            flow.solve(source(), sink());
            return flow.getOptimalFlow();
        } finally {
            flow.delete();
        }
    }

    /**
     * @param bits to how many bits costs are rounded; 20 to 45
     * @throws ArithmeticException if there is no plan, or the solver fails
     */
    Cheapest cheapest(Cost cost, int bits) {
        double largest = 0;
        for (int female = 0; female < season.females; female++) {
            for (int male = nextMale(female, 0); male >= 0; male = nextMale(female, male + 1)) {
                largest = Math.max(largest, Math.abs(cost.of(female, male)));
            }
        }
        double scale = largest == 0 ? 1 : Math.scalb(1.0, bits) / largest;
        var flow = new MinCostFlow(sink() + 1, season.females * season.males + season.males + season.females + 100);
        try {
            int[] pairs = new int[season.females * season.males];
            Arrays.fill(pairs, Season.NONE);
            arcs((from, to, capacity, female, male) -> {
                long price = male == Season.NONE ? 0 : Math.round(cost.of(female, male) * scale);
                int arc = flow.addArcWithCapacityAndUnitCost(from, to, capacity, price);
                if (male != Season.NONE) {
                    pairs[female * season.males + male] = arc;
                }
            });
            if (most > least) {
                flow.addArcWithCapacityAndUnitCost(source(), sink(), most - least, 0);
            }
            flow.setNodeSupply(source(), most);
            flow.setNodeSupply(sink(), -most);
            if (contradictory || flow.solve() != MinCostFlowBase.Status.OPTIMAL) {
                throw new ArithmeticException("the network has no plan");
            }
            int[] sires = settled.clone();
            double rounded = largest == 0 ? 0 : most * 0.501 / scale;
            double atLeast = flow.getOptimalCost() / scale - rounded;
            for (int pair = 0; pair < pairs.length; pair++) {
                if (pairs[pair] != Season.NONE && flow.getFlow(pairs[pair]) > 0) {
                    sires[pair / season.males] = pair % season.males;
                }
            }
            for (var pair : season.locked) {
                atLeast += cost.of(pair.female(), pair.male());
            }
            return new Cheapest(sires, atLeast);
        } finally {
            flow.delete();
        }
    }

    /** The next male, from one on, with whom the female may have a litter, or -1; none for a settled female. */
    private int nextMale(int female, int from) {
        if (settled[female] != Season.NONE) {
            return -1;
        }
        int male = season.allowed[female].nextSetBit(from);
        while (male >= 0 && !season.isOpen(female, male)) {
            male = season.allowed[female].nextSetBit(male + 1);
        }
        return male;
    }

    @FunctionalInterface
    private interface Arc {
        void add(int from, int to, long capacity, int female, int male);
    }

    /** Nodes: males, females, collections, source, sink. */
    private void arcs(Arc arcs) {
        for (int at = 0; at < leftOfCollection.length; at++) {
            arcs.add(source(), season.males + season.females + at, leftOfCollection[at], Season.NONE, Season.NONE);
        }
        for (int female = 0; female < season.females; female++) {
            int node = season.males + female;
            arcs.add(season.males + season.females + season.collection[female], node, 1, female, Season.NONE);
            for (int male = nextMale(female, 0); male >= 0; male = nextMale(female, male + 1)) {
                arcs.add(node, male, 1, female, male);
            }
        }
        for (int male = 0; male < season.males; male++) {
            arcs.add(male, sink(), leftOfMale[male], Season.NONE, Season.NONE);
        }
    }

    private int source() {
        return season.males + season.females + leftOfCollection.length;
    }

    private int sink() {
        return source() + 1;
    }
}
