package org.demebook.ancestry;

import static org.demebook.kinship.Convention.KNOWN_ONLY;
import static org.demebook.kinship.Convention.UNKNOWN_FULL_SIBS;
import static org.demebook.kinship.Pedigree.UNKNOWN;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.demebook.ancestry.AncestryView.Ancestor;
import org.demebook.ancestry.AncestryView.Contribution;
import org.demebook.kinship.Convention;
import org.demebook.kinship.FounderContributions;
import org.demebook.kinship.GenePool;
import org.jspecify.annotations.Nullable;

/** Shows what a snapshot knows and its asker may see, by studbook number. */
final class AncestryViews {
    private static final String UNRELATED = Convention.UNRELATED.name().toLowerCase(Locale.ROOT);

    private AncestryViews() {}

    static AncestryView ancestry(Snapshot snapshot, int row, int generations) {
        var pedigree = snapshot.pedigree();
        var doubtful = snapshot.doubtfulSiresOf(row);
        var founders = founders(snapshot, pedigree.founderContributions(row));
        var ancestors = new ArrayList<Ancestor>();
        ancestors(snapshot, row, generations)
                .forEach((ancestor, generation) -> ancestors.add(ancestor(snapshot, ancestor, generation)));
        return new AncestryView(
                ancestors.get(0),
                generations,
                pedigree.inbreeding(row),
                FigureRange.ofInbreeding(pedigree, row),
                pedigree.knownFraction(row) == 1
                        ? null
                        : pedigree.under(UNKNOWN_FULL_SIBS).inbreeding(row),
                doubtful,
                doubtful.isEmpty() ? null : snapshot.ifDoubtfulSiresUnknown().inbreeding(row),
                pedigree.knownFraction(row),
                UNRELATED,
                founders,
                unnamed(founders),
                ancestors.subList(1, ancestors.size()),
                onlyIf(snapshot.restsOnWhatIsNotShown(row)));
    }

    private static Ancestor ancestor(Snapshot snapshot, int row, int generation) {
        int dam = snapshot.shownDam(row);
        return new Ancestor(
                snapshot.number(row),
                snapshot.sex(row),
                snapshot.born(row),
                snapshot.alive(row),
                dam == UNKNOWN ? null : snapshot.number(dam),
                snapshot.sire(row),
                generation,
                snapshot.pedigree().inbreeding(row),
                snapshot.pedigree().knownFraction(row));
    }

    /**
     * The animal and those of its ancestors that are shown, through parentages that are shown, with their nearest
     * generation, nearest first; candidates count as ancestors.
     */
    static Map<Integer, Integer> ancestors(Snapshot snapshot, int row, int generations) {
        var nearest = new LinkedHashMap<Integer, Integer>();
        nearest.put(row, 0);
        var level = List.of(row);
        for (int generation = 1; generation <= generations && !level.isEmpty(); generation++) {
            var above = new ArrayList<Integer>();
            for (int young : level) {
                for (int parent : snapshot.shownParents(young)) {
                    if (nearest.putIfAbsent(parent, generation) == null) {
                        above.add(parent);
                    }
                }
            }
            level = above;
        }
        return nearest;
    }

    static KinshipView kinship(Snapshot snapshot, int row, int other) {
        var above = ancestors(snapshot, row, snapshot.size());
        var aboveOther = ancestors(snapshot, other, snapshot.size());
        var common = above.keySet().stream()
                .filter(aboveOther::containsKey)
                .sorted(Comparator.<Integer>comparingInt(ancestor -> above.get(ancestor) + aboveOther.get(ancestor))
                        .thenComparing(Comparator.naturalOrder()))
                .map(snapshot::number)
                .toList();
        var pedigree = snapshot.pedigree();
        var doubtful = snapshot.doubtfulSiresOf(row, other);
        boolean allKnown = pedigree.knownFraction(row) == 1 && pedigree.knownFraction(other) == 1;
        return new KinshipView(
                side(snapshot, row),
                side(snapshot, other),
                pedigree.kinship(row, other),
                FigureRange.ofKinship(pedigree, row, other),
                allKnown ? null : pedigree.under(UNKNOWN_FULL_SIBS).kinship(row, other),
                doubtful,
                doubtful.isEmpty() ? null : snapshot.ifDoubtfulSiresUnknown().kinship(row, other),
                ifClaimsHold(snapshot, row, other),
                UNRELATED,
                common,
                onlyIf(snapshot.restsOnWhatIsNotShown(row, other)));
    }

    private static @Nullable Double ifClaimsHold(Snapshot snapshot, int row, int other) {
        double now = snapshot.pedigree().kinship(row, other);
        return ClaimedKinship.of(snapshot.records(), row, other)
                .filter(claimed -> claimed != now)
                .orElse(null);
    }

    private static KinshipView.Side side(Snapshot snapshot, int row) {
        return new KinshipView.Side(
                snapshot.number(row),
                snapshot.pedigree().inbreeding(row),
                snapshot.pedigree().knownFraction(row));
    }

    static GenePoolView genePool(Snapshot snapshot) {
        if (snapshot.pool().isEmpty()) {
            return new GenePoolView(
                    0,
                    null,
                    null,
                    null,
                    null,
                    null,
                    "coancestry",
                    null,
                    null,
                    List.of(),
                    UNRELATED,
                    List.of(),
                    null,
                    null);
        }
        var pool = snapshot.pool().get();
        var contributions = pool.founderContributions();
        var founders = founders(snapshot, contributions);
        return new GenePoolView(
                pool.size(),
                pool.meanKinship(),
                pool.geneDiversity(),
                geneDiversity(snapshot, pool, KNOWN_ONLY),
                geneDiversity(snapshot, pool, UNKNOWN_FULL_SIBS),
                pool.founderGenomeEquivalents(),
                "coancestry",
                contributions.effectiveFounders(),
                pool.knownFraction(),
                snapshot.doubtfulSiresOf(snapshot.living()),
                UNRELATED,
                founders,
                unnamed(founders),
                onlyIf(snapshot.poolRestsOnWhatIsNotShown()));
    }

    /** Null where no gene is known. */
    private static @Nullable Double geneDiversity(Snapshot snapshot, GenePool pool, Convention convention) {
        double other = pool.knownFraction() == 1
                ? pool.geneDiversity()
                : snapshot.pedigree().under(convention).pool(pool.animals()).geneDiversity();
        return Double.isNaN(other) ? null : other;
    }

    /**
     * The stated ones that are shown: an animal of unknown parents stands at the edge of what is known, and is no founder.
     */
    private static List<Contribution> founders(Snapshot snapshot, FounderContributions contributions) {
        var founders = new ArrayList<Contribution>();
        for (int i = 0; i < contributions.founders().length; i++) {
            int row = contributions.founders()[i];
            if (snapshot.founder(row) && snapshot.isShown(row)) {
                founders.add(
                        new Contribution(snapshot.number(row), contributions.shares()[i]));
            }
        }
        founders.sort(Comparator.comparingDouble(Contribution::contribution).reversed()); // stable: ties by number
        return founders;
    }

    private static @Nullable Boolean onlyIf(boolean holds) {
        return holds ? true : null;
    }

    private static double unnamed(List<Contribution> founders) {
        double named = 0;
        for (var founder : founders) {
            named += founder.contribution();
        }
        return Math.max(0, 1 - named);
    }
}
