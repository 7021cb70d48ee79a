package org.demebook.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.demebook.kinship.Pedigree;

/** The founders whose genes are alive, and on whom each of them depends. */
public final class FounderLines {
    private final Pedigree pedigree;
    private final List<Living> living;

    private FounderLines(Pedigree pedigree, List<Living> living) {
        this.pedigree = pedigree;
        this.living = living;
    }

    /**
     * By the number of carriers, fewest first, then by founder. Shares are expected: by chance less may be left, or
     * nothing. Cost: O(pedigree) for each of the living, a kinship of each parent with each for the litters.
     *
     * @param planned litters of this season, at most one of each dam
     */
    public static List<FounderLine> of(Pedigree pedigree, List<Living> living, List<Litter> planned) {
        return new FounderLines(pedigree, living).lines(planned);
    }

    private List<FounderLine> lines(List<Litter> planned) {
        var carriers = new TreeMap<Integer, List<FounderLine.Carrier>>();
        for (var animal : living) {
            var contributions = pedigree.founderContributions(animal.row());
            for (int i = 0; i < contributions.founders().length; i++) {
                carriers.computeIfAbsent(contributions.founders()[i], founder -> new ArrayList<>())
                        .add(carrier(animal, contributions.shares()[i]));
            }
        }
        double whole = geneDiversity(pedigree, living, planned);
        return carriers.entrySet().stream()
                .map(line -> line(line, planned, whole))
                .sorted(Comparator.comparingInt(line -> line.carriers().size()))
                .toList();
    }

    private static FounderLine.Carrier carrier(Living animal, double share) {
        boolean later = Math.max(1, animal.breedsIn()) <= animal.seasons() - 1;
        return new FounderLine.Carrier(animal.row(), share, animal.mayBreed(), later);
    }

    private FounderLine line(Map.Entry<Integer, List<FounderLine.Carrier>> line, List<Litter> planned, double whole) {
        Set<Integer> rows = new HashSet<>();
        double share = 0;
        for (var carrier : line.getValue()) {
            rows.add(carrier.row());
            share += carrier.share() / living.size();
        }
        var others = planned.stream()
                .filter(litter -> !rows.contains(litter.dam()) && !rows.contains(litter.sire()))
                .toList();
        line.getValue()
                .sort(Comparator.comparingDouble((FounderLine.Carrier carrier) -> -carrier.share())
                        .thenComparingInt(FounderLine.Carrier::row));
        double lost = others.size() == planned.size() ? 0 : whole - geneDiversity(pedigree, living, others);
        return new FounderLine(line.getKey(), share, line.getValue(), lost);
    }

    /** Of those who stay and the young that are expected; 0 where nobody is left. */
    static double geneDiversity(Pedigree pedigree, List<Living> living, List<Litter> litters) {
        int[] pool = living.stream().filter(Living::stays).mapToInt(Living::row).toArray();
        if (litters.isEmpty()) {
            return pool.length == 0 ? 0 : pedigree.pool(pool).geneDiversity();
        }
        int[] dams = litters.stream().mapToInt(Litter::dam).toArray();
        int[] sires = litters.stream().mapToInt(Litter::sire).distinct().toArray();
        var season = pool.length == 0
                ? Season.of(pedigree, dams, filled(dams.length, PoolAhead.NEXT_TO_NOTHING), dams, sires)
                : Season.of(pedigree, pool, filled(pool.length, 1), dams, sires);
        int[] plan = new int[dams.length];
        for (int female = 0; female < dams.length; female++) {
            var litter = litters.get(female);
            season.young(female, litter.chance().expected());
            plan[female] = (int) Arrays.stream(sires)
                    .takeWhile(sire -> sire != litter.sire())
                    .count();
        }
        return 1 - new Draft(season.build(), plan, 0).meanKinship();
    }

    private static double[] filled(int length, double value) {
        double[] values = new double[length];
        Arrays.fill(values, value);
        return values;
    }
}
