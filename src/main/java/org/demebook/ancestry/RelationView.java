package org.demebook.ancestry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * How another animal is related to one.
 *
 * @param other its studbook number
 * @param kinship in [0, 1]: the inbreeding coefficient of young of the two
 * @param bySire from the lowest to the highest that it may be; absent where it depends on no sire that is one of several
 * @param doubtful whether it rests on a sire that is doubtful
 * @param ways from the one to the other by each nearest common ancestor that is shown; none where there is none
 * @param throughAncestorsNotShown whether it rests on what is granted to be computed with and not to be seen
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record RelationView(
        String other,
        double kinship,
        @Nullable FigureRange bySire,
        boolean doubtful,
        List<Way> ways,
        boolean throughAncestorsNotShown) {

    /**
     * A way through the pedigree, by studbook number.
     *
     * @param up from the one to the common ancestor, both included
     * @param down from there to the other; empty where the other is that ancestor
     */
    public record Way(List<String> up, List<String> down) {
        /** The common ancestor. */
        public String ancestor() {
            return up.get(up.size() - 1);
        }
    }

    private static final int MOST_WAYS = 4;

    static List<RelationView> of(Snapshot snapshot, int row, int[] others) {
        var above = youngOf(snapshot, row);
        var pedigree = snapshot.pedigree();
        return IntStream.of(others)
                .mapToObj(other -> new RelationView(
                        snapshot.number(other),
                        pedigree.kinship(row, other),
                        FigureRange.ofKinship(pedigree, row, other),
                        !snapshot.doubtfulSiresOf(row, other).isEmpty(),
                        ways(snapshot, above, youngOf(snapshot, other)),
                        snapshot.restsOnWhatIsNotShown(row, other)))
                .sorted(Comparator.comparingDouble(RelationView::kinship)
                        .reversed()) // stable: ties stay in the order asked for
                .toList();
    }

    /** Each ancestor of an animal, with the young by which it is one, the shortest way; the animal itself first, with none. */
    private static Map<Integer, Integer> youngOf(Snapshot snapshot, int row) {
        var young = new LinkedHashMap<Integer, Integer>();
        young.put(row, null);
        var level = List.of(row);
        while (!level.isEmpty()) {
            var next = new ArrayList<Integer>();
            for (int one : level) {
                for (int parent : snapshot.shownParents(one)) {
                    if (!young.containsKey(parent)) {
                        young.put(parent, one);
                        next.add(parent);
                    }
                }
            }
            level = next;
        }
        return young;
    }

    /** The shortest by each common ancestor; what meets before it is told by the nearer one. */
    private static List<Way> ways(Snapshot snapshot, Map<Integer, Integer> above, Map<Integer, Integer> aboveOther) {
        return above.keySet().stream()
                .filter(aboveOther::containsKey)
                .map(ancestor -> way(snapshot, ancestor, above, aboveOther))
                .filter(way -> Collections.disjoint(way.up(), way.down()))
                .sorted(Comparator.comparingInt(
                        way -> way.up().size() + way.down().size()))
                .limit(MOST_WAYS)
                .toList();
    }

    private static Way way(
            Snapshot snapshot, int ancestor, Map<Integer, Integer> above, Map<Integer, Integer> aboveOther) {
        var up = chain(snapshot, ancestor, above);
        Collections.reverse(up);
        var down = chain(snapshot, ancestor, aboveOther);
        return new Way(up, down.subList(1, down.size()));
    }

    private static List<String> chain(Snapshot snapshot, int ancestor, Map<Integer, Integer> young) {
        var numbers = new ArrayList<String>();
        for (Integer one = ancestor; one != null; one = young.get(one)) {
            numbers.add(snapshot.number(one));
        }
        return numbers;
    }
}
