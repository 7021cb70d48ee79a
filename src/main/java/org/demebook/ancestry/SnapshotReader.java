package org.demebook.ancestry;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.ancestry.Snapshot.ParentRows;
import org.demebook.kinship.Pedigree;
import org.demebook.kinship.PedigreeBuilder;
import org.demebook.registry.Origin;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;

/** Numbers the records of a population and tells their births. Used once. */
final class SnapshotReader {
    private static final int[] NONE = {};

    private final List<PedigreeRow> aliases = new ArrayList<>();
    private final List<PedigreeRow> animals = new ArrayList<>();
    private final Map<UUID, Integer> rowOf = new HashMap<>();

    private final Map<Draw, Integer> males = new HashMap<>();

    /** One male for all young of a draw; told apart by his candidates too, in case somebody corrects one young alone. */
    private record Draw(UUID drawId, Map<Integer, BigDecimal> candidates) {}

    /** The next record, in the order of the numbers. */
    void add(PedigreeRow record) {
        if (record.sameAsId() == null) {
            rowOf.put(record.id(), animals.size());
            animals.add(record);
        } else {
            aliases.add(record);
        }
    }

    Snapshot snapshot(long head) {
        joinAliases();
        int size = animals.size();
        var rowOfNumber = new HashMap<String, Integer>(2 * size);
        for (int row = 0; row < size; row++) {
            rowOfNumber.put(animals.get(row).number(), row);
        }
        aliases.forEach(alias -> rowOfNumber.put(alias.number(), rowOf.get(alias.id())));
        var parents = new ParentRows(new int[size], new int[size][], new HashMap<>());
        var founder = new boolean[size];
        var builder = Pedigree.builder(size);
        for (int row = 0; row < size; row++) {
            founder[row] = tell(row, parents, builder);
        }
        return new Snapshot(head, animals, founder, rowOfNumber, parents, builder.build());
    }

    /** A record may stand for one that stands for another. */
    private void joinAliases() {
        var waiting = new ArrayList<>(aliases);
        while (!waiting.isEmpty()) {
            var joined = waiting.stream()
                    .filter(alias -> rowOf.containsKey(alias.sameAsId()))
                    .toList();
            if (joined.isEmpty()) {
                throw new IllegalStateException("records that stand for each other: " + waiting);
            }
            for (var alias : joined) {
                int row = rowOf.get(alias.sameAsId());
                rowOf.put(alias.id(), row);
                animals.set(row, animals.get(row).filledFrom(alias));
            }
            waiting.removeAll(joined);
        }
    }

    /** Returns whether it is a founder: no animal of unknown parents is one unless it is stated to be wild-caught. */
    private boolean tell(int row, ParentRows parents, PedigreeBuilder builder) {
        var animal = animals.get(row);
        int dam = animal.damId() == null ? Pedigree.UNKNOWN : rowOf.get(animal.damId());
        var sire = animal.sire();
        parents.dam()[row] = dam;
        parents.sires()[row] = NONE;
        builder.key(row, animal.id());
        if (sire instanceof Sire.Known known) {
            parents.sires()[row] = new int[] {rowOf.get(known.sireId())};
            builder.young(row, parents.sires()[row][0], dam);
        } else if (sire instanceof Sire.Candidates stated) {
            var candidates = candidates(stated);
            parents.sires()[row] = rows(candidates);
            parents.uncertainSire().put(row, stated(candidates, stated.drawId() != null));
            builder.young(row, male(stated, candidates, builder), dam);
        } else if (sire instanceof Sire.None none) {
            parents.uncertainSire().put(row, stated(none));
            builder.parthenogen(row, dam, none.kindOfFusion(), Double.parseDouble(none.secondDivision()));
        } else if (dam != Pedigree.UNKNOWN) {
            builder.young(row, Pedigree.UNKNOWN, dam);
        } else if (animal.origin() == Origin.WILD_CAUGHT) {
            builder.founder(row);
            return true;
        } else {
            builder.unknownParents(row);
        }
        return false;
    }

    /** Two candidates that were found to be one animal count together. */
    private Map<Integer, BigDecimal> candidates(Sire.Candidates stated) {
        var candidates = new LinkedHashMap<Integer, BigDecimal>();
        for (var candidate : stated.candidates()) {
            candidates.merge(rowOf.get(candidate.sireId()), candidate.value(), BigDecimal::add);
        }
        return candidates;
    }

    private int male(Sire.Candidates stated, Map<Integer, BigDecimal> candidates, PedigreeBuilder builder) {
        if (stated.drawId() == null) {
            return builder.unknownSire(rows(candidates), probabilities(candidates));
        }
        return males.computeIfAbsent(
                new Draw(stated.drawId(), candidates),
                draw -> builder.unknownSire(rows(candidates), probabilities(candidates)));
    }

    private static int[] rows(Map<Integer, BigDecimal> candidates) {
        return candidates.keySet().stream().mapToInt(Integer::intValue).toArray();
    }

    private static double[] probabilities(Map<Integer, BigDecimal> candidates) {
        return candidates.values().stream().mapToDouble(BigDecimal::doubleValue).toArray();
    }

    private StatedSire stated(Map<Integer, BigDecimal> candidates, boolean wholeLitter) {
        var stated = candidates.entrySet().stream()
                .map(candidate -> new StatedCandidate(
                        animals.get(candidate.getKey()).number(),
                        candidate.getValue().stripTrailingZeros()))
                .toList();
        return new StatedSire("candidates", null, stated, wholeLitter, null, null);
    }

    private static StatedSire stated(Sire.None none) {
        return new StatedSire("none", null, null, null, none.fusion(), new BigDecimal(none.secondDivision()));
    }
}
