package org.demebook.ancestry;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.demebook.kinship.Pedigree;
import org.demebook.registry.StatedSire;

/**
 * Who the parents are, by row.
 *
 * @param founder taken from the wild, and so without parents in the register
 * @param dam {@link Pedigree#UNKNOWN} where nobody knows
 * @param sires the known sire, or all candidates
 * @param uncertainSire what is stated where it is not one known male
 * @param doubtful whose known sire is doubtful
 * @param males by draw, the pedigree's number of the one male that is one of several
 */
record Parents(
        BitSet founder,
        int[] dam,
        int[][] sires,
        Map<Integer, StatedSire> uncertainSire,
        BitSet doubtful,
        Map<Draw, Integer> males) {

    /** One male for all young of a draw; told apart by his candidates too, in case somebody corrects one young alone. */
    record Draw(UUID drawId, Map<Integer, BigDecimal> candidates) {}

    static Parents none() {
        return new Parents(new BitSet(), new int[0], new int[0][], Map.of(), new BitSet(), Map.of());
    }

    /** A copy with room for more. */
    Parents grown(int size) {
        return new Parents(
                (BitSet) founder.clone(),
                Arrays.copyOf(dam, size),
                Arrays.copyOf(sires, size),
                new HashMap<>(uncertainSire),
                (BitSet) doubtful.clone(),
                new HashMap<>(males));
    }
}
