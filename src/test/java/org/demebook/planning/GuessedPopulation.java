package org.demebook.planning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.ancestry.Snapshot;
import org.demebook.ancestry.SnapshotOf;
import org.demebook.consent.Action;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;

/**
 * A simulated population whose keepers let its animals be computed with and not be seen: twelve founders, five generations of
 * 28, of which the last three live, with seven keepers; the same for the same seed. The size is that of the simulation by
 * which Demebook's disclosure rules were chosen.
 */
final class GuessedPopulation {
    static final int KEEPERS = 7;
    static final LocalDate TODAY = LocalDate.of(2026, 11, 28);

    private static final int FOUNDERS = 12;
    private static final int GENERATIONS = 5;
    private static final int YOUNG = 28;
    private static final int DAYS_OF_AGE_TO_BREED = 1095;

    final List<PedigreeRow> records = new ArrayList<>();
    final int[] keeper = new int[FOUNDERS + GENERATIONS * YOUNG];
    final int[] dam = new int[keeper.length];
    final int[] sire = new int[keeper.length];
    final Snapshot whole;

    private final UUID[] collections = new UUID[KEEPERS];
    private final Random random;

    GuessedPopulation(long seed) {
        random = new Random(seed);
        for (int k = 0; k < KEEPERS; k++) {
            collections[k] = id();
        }
        for (int row = 0; row < FOUNDERS; row++) {
            keeper[row] = random.nextInt(KEEPERS);
            add(row, -1, -1);
        }
        for (int generation = 1; generation <= GENERATIONS; generation++) {
            int end = FOUNDERS + generation * YOUNG;
            while (records.size() < end) {
                litter(generation, Math.min(2 + random.nextInt(4), end - records.size()));
            }
        }
        whole = SnapshotOf.whole(records);
    }

    private void litter(int generation, int size) {
        int mother = one(parents(generation, Sex.FEMALE));
        int father = one(parents(generation, Sex.MALE));
        for (int i = 0; i < size; i++) {
            int row = records.size();
            keeper[row] = random.nextBoolean() ? keeper[mother] : random.nextInt(KEEPERS);
            add(row, mother, father);
        }
    }

    private void add(int row, int mother, int father) {
        int generation = generation(row);
        var born = LocalDate.of(2008 + 2 * generation, 6, 1);
        dam[row] = mother;
        sire[row] = father;
        records.add(new PedigreeRow(
                id(),
                new StudbookNumber("MC", "H", row + 1L).toString(),
                row % 2 == 0 ? Sex.FEMALE : Sex.MALE,
                born.toString(),
                born,
                born,
                generation > GENERATIONS - 3,
                null,
                mother < 0 ? Origin.WILD_CAUGHT : Origin.CAPTIVE_BRED,
                mother < 0 ? null : records.get(mother).id(),
                father < 0
                        ? new Sire.Unknown()
                        : new Sire.Known(records.get(father).id(), false),
                collections[keeper[row]],
                collections[keeper[row]],
                null,
                null,
                1));
    }

    private static int generation(int row) {
        return row < FOUNDERS ? 0 : 1 + (row - FOUNDERS) / YOUNG;
    }

    /** Whoever may be a parent of an animal of the generation, which everybody can tell by the years of birth. */
    private int[] parents(int generation, Sex sex) {
        return IntStream.range(0, records.size())
                .filter(row ->
                        generation(row) == generation - 1 && records.get(row).sex() == sex)
                .toArray();
    }

    int[] possibleParents(int row, Sex sex) {
        return parents(generation(row), sex);
    }

    /** Living rows that a keeper holds, or does not. */
    int[] living(int ofKeeper, boolean held) {
        return IntStream.of(whole.living())
                .filter(row -> (keeper[row] == ofKeeper) == held)
                .toArray();
    }

    /** What a keeper sees: their own animals, and the numbers of their parents. */
    Snapshot seenBy(int ofKeeper) {
        return SnapshotOf.seen(whole, (row, fieldGroup, action) -> keeper[row] == ofKeeper);
    }

    /** The planner's answer for an animal, by rows: more than is answered, where a pseudonym stands for each. */
    int[] partners(int row) {
        var computed = SnapshotOf.seen(
                whole, (other, fieldGroup, action) -> keeper[other] == keeper[row] || action == Action.COMPUTE);
        var households = new HashMap<UUID, UUID>();
        for (var collection : collections) {
            households.put(collection, collection);
        }
        var candidates = new Candidates(
                computed,
                TODAY,
                DAYS_OF_AGE_TO_BREED,
                ComputedPartners.unnamed(computed),
                other -> false,
                Hindrances.of(Map.of()));
        return new ComputedPartners(candidates, row, households)
                .best().stream().mapToInt(whole::row).toArray();
    }

    private int one(int[] of) {
        return of[random.nextInt(of.length)];
    }

    private UUID id() {
        return new UUID(random.nextLong(), random.nextLong());
    }
}
