package org.demebook.telling;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What has to be said and withdrawn for what stands told to be what is due. A telling that is due to more nodes stays, and the others
 * are told by one of their own; one that is due to fewer is withdrawn, and told anew to those that are left.
 *
 * @param withdrawn sequence numbers, ascending
 */
record Difference(List<Telling> said, List<Long> withdrawn) {
    static Difference of(Collection<Telling> due, Collection<TellingRow> standing) {
        var said = new ArrayList<Telling>();
        var withdrawn = new ArrayList<Long>();
        var dueReaders = new HashMap<String, Set<String>>();
        due.forEach(telling -> dueReaders
                .computeIfAbsent(telling.digest(), any -> new TreeSet<>())
                .addAll(telling.readers()));
        var told = new HashMap<String, Set<String>>();
        for (var row : standing) {
            var readers = dueReaders.getOrDefault(row.digest, Set.of());
            if (row.readers != null && readers.containsAll(row.readers())) {
                told.computeIfAbsent(row.digest, any -> new TreeSet<>()).addAll(row.readers());
            } else {
                withdrawn.add(row.seq);
            }
        }
        for (var telling : due) {
            var missing = new TreeSet<>(telling.readers());
            missing.removeAll(told.getOrDefault(telling.digest(), Set.of()));
            if (!missing.isEmpty()) {
                said.add(new Telling(telling.says(), missing));
            }
        }
        withdrawn.sort(Long::compare);
        return new Difference(said, withdrawn);
    }

    boolean isNone() {
        return said.isEmpty() && withdrawn.isEmpty();
    }
}
