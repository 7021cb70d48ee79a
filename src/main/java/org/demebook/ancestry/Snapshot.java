package org.demebook.ancestry;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.kinship.GenePool;
import org.demebook.kinship.Pedigree;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sex;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/**
 * A population as its journal left it at one entry: parallel arrays by row, and the pedigree under the same rows.
 *
 * <p>Records that were found to be one animal have one row; each of their numbers leads to it. Rows stand in the order of
 * the numbers. Immutable. Takes about 450 bytes an animal: its texts and places 250, its pedigree 200.
 */
public final class Snapshot {
    private final long head;
    private final String[] number;
    private final Sex[] sex;
    private final @Nullable String[] born;
    private final @Nullable LocalDate[] bornEarliest;
    private final @Nullable LocalDate[] bornLatest;
    private final boolean[] alive;
    private final @Nullable LocalDate[] diedEarliest;
    private final @Nullable UUID[] collection;
    private final @Nullable UUID[] owner;
    private final boolean[] founder;
    private final Map<String, Integer> rowOfNumber;
    private final ParentRows parents;
    private final Pedigree pedigree;
    private final Optional<GenePool> pool;

    /**
     * @param animals by row
     * @param founder by row: taken from the wild, and so without parents in the register
     * @param rowOfNumber also of the numbers that another one stands for
     */
    Snapshot(
            long head,
            List<PedigreeRow> animals,
            boolean[] founder,
            Map<String, Integer> rowOfNumber,
            ParentRows parents,
            Pedigree pedigree) {
        this.head = head;
        this.founder = founder;
        this.rowOfNumber = rowOfNumber;
        this.parents = parents;
        this.pedigree = pedigree;
        int size = animals.size();
        number = new String[size];
        sex = new Sex[size];
        born = new String[size];
        bornEarliest = new LocalDate[size];
        bornLatest = new LocalDate[size];
        alive = new boolean[size];
        diedEarliest = new LocalDate[size];
        collection = new UUID[size];
        owner = new UUID[size];
        var shared = new HashMap<Object, Object>();
        for (int row = 0; row < size; row++) {
            var animal = animals.get(row);
            number[row] = animal.number();
            sex[row] = animal.sex();
            born[row] = once(shared, animal.born());
            bornEarliest[row] = once(shared, animal.bornEarliest());
            bornLatest[row] = once(shared, animal.bornLatest());
            alive[row] = animal.alive();
            diedEarliest[row] = once(shared, animal.diedEarliest());
            collection[row] = once(shared, animal.collectionId());
            owner[row] = once(shared, animal.ownerCollectionId());
        }
        int[] living = living();
        pool = living.length == 0 ? Optional.empty() : Optional.of(pedigree.pool(living));
    }

    // litters share their day of birth and their collection: equal values are kept once
    @SuppressWarnings("unchecked")
    private static <T> @Nullable T once(Map<Object, Object> shared, @Nullable T value) {
        return value == null ? null : (T) shared.computeIfAbsent(value, same -> same);
    }

    /** Sequence number of the journal entry up to which this is. */
    public long head() {
        return head;
    }

    public int size() {
        return number.length;
    }

    /** The row of an animal by any of its numbers. */
    Optional<Integer> row(String writtenNumber) {
        return Optional.ofNullable(rowOfNumber.get(writtenNumber));
    }

    public String number(int row) {
        return number[row];
    }

    public Sex sex(int row) {
        return sex[row];
    }

    /** As it is known, in writing. */
    @Nullable
    String born(int row) {
        return born[row];
    }

    /** Null: not known, or open towards the past. */
    public @Nullable LocalDate bornEarliest(int row) {
        return bornEarliest[row];
    }

    /** Null: not known, or open towards the future. */
    public @Nullable LocalDate bornLatest(int row) {
        return bornLatest[row];
    }

    public boolean alive(int row) {
        return alive[row];
    }

    /** Null: it is alive, or nobody knows since when it is not. */
    public @Nullable LocalDate diedEarliest(int row) {
        return diedEarliest[row];
    }

    /** Where it lives; null while it is in a transfer. Never to be shown. */
    public @Nullable UUID collection(int row) {
        return collection[row];
    }

    /** Whose it is. Never to be shown. */
    public @Nullable UUID owner(int row) {
        return owner[row];
    }

    /** Whether it was taken from the wild, which is not the same as that nobody knows its parents. */
    public boolean founder(int row) {
        return founder[row];
    }

    /** Row of the dam, or {@link Pedigree#UNKNOWN}. */
    int dam(int row) {
        return parents.dam()[row];
    }

    /** Rows of the males that sired it or may have. */
    int[] sires(int row) {
        return parents.sires()[row];
    }

    /** The sire as a member sees it. */
    StatedSire sire(int row) {
        var sire = parents.uncertainSire().get(row);
        if (sire != null) {
            return sire;
        }
        return sires(row).length == 0 ? StatedSire.UNKNOWN : StatedSire.known(number[sires(row)[0]]);
    }

    /** Rows of the living, ascending. */
    public int[] living() {
        return IntStream.range(0, number.length).filter(row -> alive[row]).toArray();
    }

    public Pedigree pedigree() {
        return pedigree;
    }

    /** The living as one pool of genes; empty when none is alive. */
    public Optional<GenePool> pool() {
        return pool;
    }

    /**
     * Who the parents are, by row.
     *
     * @param dam {@link Pedigree#UNKNOWN} where nobody knows
     * @param sires the known sire, or all candidates
     * @param uncertainSire what is stated where it is not one known male
     */
    record ParentRows(int[] dam, int[][] sires, Map<Integer, StatedSire> uncertainSire) {}

    @Override
    public String toString() {
        return "%d animals at entry %d".formatted(number.length, head);
    }
}
