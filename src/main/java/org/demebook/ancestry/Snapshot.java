package org.demebook.ancestry;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.kinship.GenePool;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/**
 * A population as its journal left it at one entry: its animals by row, and the pedigree under the same rows.
 *
 * <p>Records that were found to be one animal have one row; each of their numbers leads to it. Rows stand in the order of
 * the numbers. Immutable. Takes about 550 bytes an animal, of which its pedigree takes 200.
 */
public final class Snapshot {
    private final long head;
    private final Records records;
    private final Parents parents;
    private final Pedigree pedigree;
    private final Optional<GenePool> pool;

    private Snapshot(long head, Records records, BirthTeller births) {
        this(head, records, births.parents(), births.pedigree());
    }

    private Snapshot(long head, Records records, Parents parents, Pedigree pedigree) {
        this(head, records, parents, pedigree, pool(records, pedigree));
    }

    private Snapshot(long head, Records records, Parents parents, Pedigree pedigree, Optional<GenePool> pool) {
        this.head = head;
        this.records = records;
        this.parents = parents;
        this.pedigree = pedigree;
        this.pool = pool;
    }

    private static Optional<GenePool> pool(Records records, Pedigree pedigree) {
        int[] living = records.living();
        return living.length == 0 ? Optional.empty() : Optional.of(pedigree.pool(living));
    }

    /** @param all records of a population, in the order of the numbers */
    static Snapshot of(long head, List<PedigreeRow> all) {
        var records = Records.of(all);
        return new Snapshot(head, records, new BirthTeller(records));
    }

    /**
     * This population after entries that touched these records: births are added to its pedigree, and its living counted
     * anew. Empty where that would not do, since ancestry that was told before is told differently now; then all of it has
     * to be read. O(population) in copying and one sweep of its pedigree, O(ancestors) for each birth.
     *
     * @param touched in the order of the numbers, as they are now
     */
    Optional<Snapshot> after(long laterHead, List<PedigreeRow> touched) {
        if (touched.isEmpty()) {
            return Optional.of(new Snapshot(laterHead, records, parents, pedigree, pool));
        }
        if (!touched.stream().allMatch(this::leavesAncestryAlone)) {
            return Optional.empty();
        }
        var later = records.with(touched);
        if (later.size() > records.size()) {
            return Optional.of(new Snapshot(laterHead, later, new BirthTeller(later, parents, pedigree)));
        }
        boolean sameLiving = touched.stream()
                .allMatch(record -> record.alive()
                        == records.animal(records.row(record.id())).alive());
        return Optional.of(
                new Snapshot(laterHead, later, parents, pedigree, sameLiving ? pool : pool(later, pedigree)));
    }

    private boolean leavesAncestryAlone(PedigreeRow record) {
        if (record.sameAsId() != null) {
            return false;
        }
        if (!records.knows(record.id())) {
            return records.comesLast(record.number());
        }
        int row = records.row(record.id());
        return !records.isJoined(row)
                && record.parentageSeq() <= head
                && (record.origin() == Origin.WILD_CAUGHT)
                        == (records.animal(row).origin() == Origin.WILD_CAUGHT);
    }

    /** Sequence number of the journal entry up to which this is. */
    public long head() {
        return head;
    }

    public int size() {
        return records.size();
    }

    /** The row of an animal by any of its numbers. */
    Optional<Integer> row(String writtenNumber) {
        return records.row(writtenNumber);
    }

    public String number(int row) {
        return records.animal(row).number();
    }

    public Sex sex(int row) {
        return records.animal(row).sex();
    }

    /** As it is known, in writing. */
    @Nullable
    String born(int row) {
        return records.animal(row).born();
    }

    /** Null: not known, or open towards the past. */
    public @Nullable LocalDate bornEarliest(int row) {
        return records.animal(row).bornEarliest();
    }

    /** Null: not known, or open towards the future. */
    public @Nullable LocalDate bornLatest(int row) {
        return records.animal(row).bornLatest();
    }

    public boolean alive(int row) {
        return records.animal(row).alive();
    }

    /** Null: it is alive, or nobody knows since when it is not. */
    public @Nullable LocalDate diedEarliest(int row) {
        return records.animal(row).diedEarliest();
    }

    /** Where it lives; null while it is in a transfer, or in dispute. Never to be shown. */
    public @Nullable UUID collection(int row) {
        return records.animal(row).collectionId();
    }

    /** Whose it is; null while it is in dispute where it is. Never to be shown. */
    public @Nullable UUID owner(int row) {
        return records.animal(row).ownerCollectionId();
    }

    /** Whether it was taken from the wild, which is not the same as that nobody knows its parents. */
    public boolean founder(int row) {
        return parents.founder().get(row);
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
        return sires(row).length == 0 ? StatedSire.UNKNOWN : StatedSire.known(number(sires(row)[0]));
    }

    /** Rows of the living, ascending. */
    public int[] living() {
        return records.living();
    }

    public Pedigree pedigree() {
        return pedigree;
    }

    /** The living as one pool of genes; empty when none is alive. */
    public Optional<GenePool> pool() {
        return pool;
    }

    @Override
    public String toString() {
        return "%d animals at entry %d".formatted(size(), head);
    }
}
