package org.demebook.ancestry;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import org.demebook.ancestry.Parents.Draw;
import org.demebook.kinship.Pedigree;
import org.demebook.kinship.PedigreeBuilder;
import org.demebook.notation.Origin;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;

/** Tells the births of numbered records to a pedigree: all of them, or those that have come since. */
final class BirthTeller {
    private static final int[] NONE = {};

    private final Records records;
    private final Parents parents;
    private final PedigreeBuilder builder;

    BirthTeller(Records records) {
        this(records, Parents.none().grown(records.size()), Pedigree.builder(records.size()), 0);
    }

    /** @param before of the same rows but the last ones */
    BirthTeller(Records records, Parents before, Pedigree pedigree) {
        this(
                records,
                before.grown(records.size()),
                pedigree.extended(records.size() - pedigree.size()),
                pedigree.size());
    }

    private BirthTeller(Records records, Parents parents, PedigreeBuilder builder, int from) {
        this.records = records;
        this.parents = parents;
        this.builder = builder;
        for (int row = from; row < records.size(); row++) {
            tell(row);
        }
    }

    Parents parents() {
        return parents;
    }

    Pedigree pedigree() {
        return builder.build();
    }

    /** No animal of unknown parents is a founder unless it is stated to be wild-caught. */
    private void tell(int row) {
        var animal = records.animal(row);
        int dam = animal.damId() == null ? Pedigree.UNKNOWN : records.row(animal.damId());
        var sire = animal.sire();
        parents.dam()[row] = dam;
        parents.sires()[row] = NONE;
        builder.key(row, animal.id());
        boolean ownGenome = !isTwin(row, animal);
        if (!ownGenome) {
            builder.twin(row, records.row(animal.twinOfId()));
        }
        if (sire instanceof Sire.Known known) {
            parents.sires()[row] = new int[] {records.row(known.sireId())};
            parents.doubtful().set(row, known.doubtful());
            if (ownGenome) {
                builder.young(row, parents.sires()[row][0], dam);
            }
        } else if (sire instanceof Sire.Candidates stated) {
            var candidates = candidates(stated);
            parents.sires()[row] = rows(candidates);
            parents.uncertainSire().put(row, stated(candidates, stated.drawId() != null));
            if (ownGenome) {
                builder.young(row, male(stated, candidates), dam);
            }
        } else if (sire instanceof Sire.None none) {
            parents.uncertainSire().put(row, stated(none));
            if (ownGenome) {
                builder.parthenogen(row, dam, none.kindOfFusion(), Double.parseDouble(none.secondDivision()));
            }
        } else if (ownGenome) {
            tellWithoutSire(row, animal, dam);
        }
    }

    /** Its genome is told with the birth of the other; two records of one animal are no twins, whatever was said before. */
    private boolean isTwin(int row, PedigreeRow animal) {
        return animal.twinOfId() != null && records.row(animal.twinOfId()) != row;
    }

    private void tellWithoutSire(int row, PedigreeRow animal, int dam) {
        if (dam != Pedigree.UNKNOWN) {
            builder.young(row, Pedigree.UNKNOWN, dam);
        } else if (animal.origin() == Origin.WILD_CAUGHT) {
            builder.founder(row);
            parents.founder().set(row);
        } else {
            builder.unknownParents(row);
        }
    }

    /** Two candidates that were found to be one animal count together. */
    private Map<Integer, BigDecimal> candidates(Sire.Candidates stated) {
        var candidates = new LinkedHashMap<Integer, BigDecimal>();
        for (var candidate : stated.candidates()) {
            candidates.merge(records.row(candidate.sireId()), candidate.value(), BigDecimal::add);
        }
        return candidates;
    }

    private int male(Sire.Candidates stated, Map<Integer, BigDecimal> candidates) {
        if (stated.drawId() == null) {
            return builder.unknownSire(rows(candidates), probabilities(candidates));
        }
        return parents.males()
                .computeIfAbsent(
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
                        records.animal(candidate.getKey()).number(),
                        candidate.getValue().stripTrailingZeros()))
                .toList();
        return StatedSire.candidates(stated, wholeLitter);
    }

    private static StatedSire stated(Sire.None none) {
        return StatedSire.none(none.fusion(), new BigDecimal(none.secondDivision()));
    }
}
