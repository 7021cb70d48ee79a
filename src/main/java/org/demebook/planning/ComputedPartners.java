package org.demebook.planning;

import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.ancestry.Snapshot;
import org.demebook.notation.Sex;

/**
 * Partners for an animal among those that are granted to be computed with and not to be read, on the pedigree of what is
 * granted to be computed with in order to pair animals.
 *
 * @param candidates of that pedigree, of which those that are granted so may be proposed
 * @param row of the animal
 * @param households by collection
 */
record ComputedPartners(Candidates candidates, int row, Map<UUID, UUID> households) {
    /** Of fewer one could work out whose they are. */
    static final int FEWEST_HOUSEHOLDS = 3;

    /** Collections that nobody acts for any more are one household: they may all have been one keeper's. */
    private static final UUID NOBODY = new UUID(0, 0);

    private static final int MOST = 5;
    private static final double MAXIMUM_INBREEDING = 0.125;

    /**
     * The rows of living animals that count with their parentage, and of which the asker may not read both. Those on loan or on
     * their way are left out, since who holds them could not agree by themselves to anything; and those on other nodes, since
     * nobody can be asked there.
     */
    static BitSet unnamed(Snapshot computed) {
        var unnamed = new BitSet(computed.size());
        for (int row : computed.living()) {
            unnamed.set(row, isHere(computed, row) && isUnnamed(computed, row) && isWithItsOwner(computed, row));
        }
        return unnamed;
    }

    static boolean isUnnamed(Snapshot computed, int row) {
        return computed.countsParentage(row) && !(computed.isShown(row) && computed.isParentageShown(row));
    }

    private static boolean isHere(Snapshot computed, int row) {
        return computed.node(row) == null;
    }

    private static boolean isWithItsOwner(Snapshot computed, int row) {
        var collection = computed.collection(row);
        return collection != null && collection.equals(computed.owner(row));
    }

    /** How many households other than the animal's own have an animal among which partners are looked for. */
    int contributingHouseholds() {
        var contributing = new HashSet<UUID>();
        for (int other : mature()) {
            contributing.add(household(other));
        }
        return contributing.size();
    }

    /** At most five: those of the lowest mean kinship whose young would not be too inbred. The order means something. */
    List<UUID> best() {
        var snapshot = candidates.snapshot();
        if (snapshot.pool().isEmpty()) {
            return List.of();
        }
        boolean female = snapshot.sex(row) == Sex.FEMALE;
        int[] self = {row};
        int[] mature = mature();
        return Ranking.of(
                        snapshot.pedigree(),
                        snapshot.pool().get(),
                        female ? self : mature,
                        female ? mature : self,
                        (dam, sire) -> true,
                        MAXIMUM_INBREEDING,
                        MOST)
                .stream()
                .map(pair -> snapshot.id(female ? pair.sire() : pair.dam()))
                .toList();
    }

    private int[] mature() {
        var snapshot = candidates.snapshot();
        var own = household(row);
        return IntStream.of(candidates.proposable(snapshot.sex(row) == Sex.FEMALE ? Sex.MALE : Sex.FEMALE))
                .filter(other -> !household(other).equals(own))
                .toArray();
    }

    /** Of who holds it, or owns it while it is on its way. */
    private UUID household(int of) {
        var snapshot = candidates.snapshot();
        var collection = snapshot.collection(of);
        var holder = collection == null ? Objects.requireNonNull(snapshot.owner(of)) : collection;
        return households.getOrDefault(holder, NOBODY);
    }
}
