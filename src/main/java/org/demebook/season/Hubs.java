package org.demebook.season;

import com.google.ortools.Loader;
import com.google.ortools.graph.MaxFlow;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * How many litters a season could have if all males that travel from a collection were one, who may have what the busiest that
 * may travel could have together. That is at least as many as it can have, and quickly found.
 */
final class Hubs {
    static {
        Loader.loadNativeLibraries();
    }

    private final Season season;
    private final int collections;

    private Hubs(Season season) {
        this.season = season;
        collections = season.littersOfCollection.length;
    }

    /** False: there is no plan. True: there may be one. */
    static boolean leaveEnough(Season season) {
        return season.least == 0 || new Hubs(season).most() >= season.least;
    }

    /** Nodes: males, females, hubs, collections, source, sink. */
    private long most() {
        var flow = new MaxFlow();
        try {
            int source = hub(2 * collections);
            int sink = source + 1;
            for (int at = 0; at < collections; at++) {
                flow.addArcWithCapacity(source, hub(collections + at), season.littersOfCollection[at]);
                flow.addArcWithCapacity(hub(at), sink, ofTravellers(at));
            }
            for (int male = 0; male < season.males; male++) {
                flow.addArcWithCapacity(male, sink, littersOf(male));
            }
            for (int female = 0; female < season.females; female++) {
                int node = season.males + female;
                flow.addArcWithCapacity(hub(collections + season.collection[female]), node, 1);
                sires(flow, female, node);
            }
            flow.solve(source, sink);
            return flow.getOptimalFlow();
        } finally {
            flow.delete();
        }
    }

    private int hub(int at) {
        return season.males + season.females + at;
    }

    private void sires(MaxFlow flow, int female, int node) {
        boolean[] from = new boolean[collections];
        for (int male = 0; male < season.males; male++) {
            if (season.isOpen(female, male)) {
                if (season.isAcross(female, male)) {
                    from[season.collection[season.females + male]] = true;
                } else {
                    flow.addArcWithCapacity(node, male, 1);
                }
            }
        }
        for (int at = 0; at < collections; at++) {
            if (from[at]) {
                flow.addArcWithCapacity(node, hub(at), 1);
            }
        }
    }

    /** What those males of a collection can have together that may travel, if those do who may have most. */
    private int ofTravellers(int at) {
        int[] litters = IntStream.range(0, season.males)
                .filter(male -> season.collection[season.females + male] == at)
                .map(this::littersOf)
                .sorted()
                .toArray();
        int stay = Math.max(0, litters.length - season.travellersOfCollection[at]);
        return Arrays.stream(litters, stay, litters.length).sum();
    }

    private int littersOf(int male) {
        return Math.min(season.littersOfMale[male], season.females);
    }
}
