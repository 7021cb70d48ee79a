package org.demebook.ancestry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.PedigreeRow;

/**
 * The records of a population, numbered: one row for each animal, in the order of the numbers. Immutable.
 *
 * @param animals by row
 * @param rowOfId of records that another one stands for, too
 * @param rowOfNumber likewise
 * @param joined the rows that several records have
 * @param claimedSame by id: records that a node claims to be of one animal, and nobody agreed yet
 */
record Records(
        PedigreeRow[] animals,
        Map<UUID, Integer> rowOfId,
        Map<String, Integer> rowOfNumber,
        BitSet joined,
        Map<UUID, UUID> claimedSame) {

    /** @param all in the order of the numbers */
    static Records of(List<PedigreeRow> all) {
        return of(all, Map.of());
    }

    static Records of(List<PedigreeRow> all, Map<UUID, UUID> claimedSame) {
        var animals = new ArrayList<PedigreeRow>(all.size());
        var aliases = new ArrayList<PedigreeRow>();
        var rowOfId = new HashMap<UUID, Integer>(2 * all.size());
        var rowOfNumber = new HashMap<String, Integer>(2 * all.size());
        for (var record : all) {
            if (record.sameAsId() == null) {
                rowOfId.put(record.id(), animals.size());
                rowOfNumber.put(record.number(), animals.size());
                animals.add(record);
            } else {
                aliases.add(record);
            }
        }
        var joined = joinAliases(aliases, animals, rowOfId);
        aliases.forEach(alias -> rowOfNumber.put(alias.number(), rowOfId.get(alias.id())));
        return new Records(animals.toArray(PedigreeRow[]::new), rowOfId, rowOfNumber, joined, claimedSame);
    }

    /** A record may stand for one that stands for another. */
    private static BitSet joinAliases(
            List<PedigreeRow> aliases, List<PedigreeRow> animals, Map<UUID, Integer> rowOfId) {
        var rows = new BitSet();
        var waiting = new ArrayList<>(aliases);
        while (!waiting.isEmpty()) {
            var joined = waiting.stream()
                    .filter(alias -> rowOfId.containsKey(alias.sameAsId()))
                    .toList();
            if (joined.isEmpty()) {
                throw new IllegalStateException("records that stand for each other: " + waiting);
            }
            for (var alias : joined) {
                int row = rowOfId.get(alias.sameAsId());
                rows.set(row);
                rowOfId.put(alias.id(), row);
                animals.set(row, animals.get(row).filledFrom(alias));
            }
            waiting.removeAll(joined);
        }
        return rows;
    }

    /** The same if everything that is claimed were so; empty where nothing is. */
    Optional<Records> ifClaimsHold() {
        var sameAs = new HashMap<UUID, UUID>();
        claimedSame.forEach((one, other) -> {
            if (knows(one) && knows(other)) {
                var canonical = animals[Math.min(row(one), row(other))].id();
                var alias = animals[Math.max(row(one), row(other))].id();
                if (!canonical.equals(alias)) {
                    sameAs.put(alias, canonical);
                }
            }
        });
        return sameAs.isEmpty()
                ? Optional.empty()
                : Optional.of(of(Arrays.stream(animals)
                        .map(animal ->
                                sameAs.containsKey(animal.id()) ? animal.standingFor(sameAs.get(animal.id())) : animal)
                        .toList()));
    }

    /** @param touched known ones in place of what they were, new ones behind all others; none stands for another */
    Records with(List<PedigreeRow> touched) {
        var fresh = touched.stream().filter(record -> !knows(record.id())).toList();
        var later = Arrays.copyOf(animals, animals.length + fresh.size());
        for (var record : touched) {
            if (knows(record.id())) {
                later[row(record.id())] = record;
            }
        }
        if (fresh.isEmpty()) {
            return new Records(later, rowOfId, rowOfNumber, joined, claimedSame);
        }
        var ids = new HashMap<>(rowOfId);
        var numbers = new HashMap<>(rowOfNumber);
        int row = animals.length;
        for (var record : fresh) {
            ids.put(record.id(), row);
            numbers.put(record.number(), row);
            later[row++] = record;
        }
        return new Records(later, ids, numbers, joined, claimedSame);
    }

    /** The same where nobody named the sires of some rows. */
    Records withoutSires(BitSet rows) {
        var later = animals.clone();
        rows.stream().forEach(row -> later[row] = animals[row].withoutSire());
        return new Records(later, rowOfId, rowOfNumber, joined, claimedSame);
    }

    int size() {
        return animals.length;
    }

    PedigreeRow animal(int row) {
        return animals[row];
    }

    boolean knows(UUID id) {
        return rowOfId.containsKey(id);
    }

    int row(UUID id) {
        return rowOfId.get(id);
    }

    Optional<Integer> row(String number) {
        return Optional.ofNullable(rowOfNumber.get(number));
    }

    boolean isJoined(int row) {
        return joined.get(row);
    }

    boolean comesLast(String number) {
        return animals.length == 0
                || StudbookNumber.parse(number).compareTo(StudbookNumber.parse(animals[animals.length - 1].number()))
                        > 0;
    }

    /** Rows, ascending. */
    int[] living() {
        return IntStream.range(0, animals.length)
                .filter(row -> animals[row].alive())
                .toArray();
    }
}
