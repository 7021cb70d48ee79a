package org.demebook.ancestry;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;

/**
 * An ancestry, with what a chart of it wants beside the list.
 *
 * @param basis the same for who may see the same, until something changes: two with equal basis, animal and depth are equal
 * @param founders studbook numbers of those listed that were taken from the wild
 * @param parentsNotShown of those whose parents are not shown, known or not
 * @param relatedSires of those listed whose dam and a sire, or one that may be, have a kinship above 0: these sires
 */
public record ChartedAncestry(
        Object basis,
        AncestryView ancestry,
        Set<String> founders,
        Set<String> parentsNotShown,
        Map<String, Set<String>> relatedSires) {

    static ChartedAncestry of(Snapshot snapshot, int row, int generations, Collection<Integer> listed) {
        var founders = new HashSet<String>();
        var notShown = new HashSet<String>();
        var related = new HashMap<String, Set<String>>();
        for (int one : listed) {
            if (snapshot.founder(one)) {
                founders.add(snapshot.number(one));
            }
            if (!snapshot.isParentageShown(one)) {
                notShown.add(snapshot.number(one));
                continue;
            }
            int dam = snapshot.dam(one);
            if (dam != Pedigree.UNKNOWN) {
                var sires = IntStream.of(snapshot.sires(one))
                        .filter(sire -> !snapshot.isNameless(sire)
                                && snapshot.pedigree().kinship(dam, sire) > 0)
                        .mapToObj(snapshot::number)
                        .collect(Collectors.toSet());
                related.put(snapshot.number(one), sires);
            }
        }
        return new ChartedAncestry(
                snapshot.identity(), AncestryViews.ancestry(snapshot, row, generations), founders, notShown, related);
    }
}
