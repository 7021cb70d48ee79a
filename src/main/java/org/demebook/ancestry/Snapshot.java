package org.demebook.ancestry;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.consent.Subject;
import org.demebook.kinship.GenePool;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/**
 * A population as its journal left it at one entry: its animals by row, and the pedigree under the same rows. Either all of
 * it, or what one asker may see or have computed with; then there may be rows that count and are not to be shown.
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
    private final DoubtfulSires doubtful;
    private final Shown shown;
    private final NamedParents named;
    private final Object identity;

    private Snapshot(long head, Records records, BirthTeller births) {
        this(head, records, births.parents(), births.pedigree());
    }

    private Snapshot(long head, Records records, Parents parents, Pedigree pedigree) {
        this(
                head,
                records,
                parents,
                pedigree,
                pool(records, pedigree),
                new DoubtfulSires(records, parents),
                new Object());
    }

    private Snapshot(
            long head,
            Records records,
            Parents parents,
            Pedigree pedigree,
            Optional<GenePool> pool,
            DoubtfulSires doubtful,
            Object identity) {
        this.head = head;
        this.records = records;
        this.parents = parents;
        this.pedigree = pedigree;
        this.pool = pool;
        this.doubtful = doubtful;
        this.identity = identity;
        this.shown = Shown.all(parents);
        this.named = new NamedParents(records, parents, shown);
    }

    private Snapshot(long head, Cut cut, BirthTeller births) {
        this.head = head;
        this.records = cut.records();
        this.parents = births.parents();
        this.pedigree = births.pedigree();
        this.pool = pool(records, pedigree);
        this.doubtful = new DoubtfulSires(records, parents);
        this.identity = new Object();
        this.shown = new Shown(parents, cut);
        this.named = new NamedParents(records, parents, shown);
    }

    private static Optional<GenePool> pool(Records records, Pedigree pedigree) {
        int[] living = records.living();
        return living.length == 0 ? Optional.empty() : Optional.of(pedigree.pool(living));
    }

    /** @param all records of a population, in the order of the numbers */
    static Snapshot of(long head, List<PedigreeRow> all) {
        return of(head, Records.of(all));
    }

    static Snapshot of(long head, Records records) {
        return new Snapshot(head, records, new BirthTeller(records));
    }

    /** What a sight of this population, which is all of it, leaves: itself where that is everything. O(population). */
    Snapshot as(Sight sight) {
        if (sight.isWhole(size())) {
            return this;
        }
        var cut = Cut.of(records, sight);
        return new Snapshot(head, cut, new BirthTeller(cut.records()));
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
            return Optional.of(new Snapshot(laterHead, records, parents, pedigree, pool, doubtful, identity));
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
        return Optional.of(new Snapshot(
                laterHead,
                later,
                parents,
                pedigree,
                sameLiving ? pool : pool(later, pedigree),
                doubtful,
                new Object()));
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

    /** The same object for snapshots that answer everything alike. */
    public Object identity() {
        return identity;
    }

    Records records() {
        return records;
    }

    /** The row of an animal by any of its numbers; of one that is not to be shown there is none. */
    Optional<Integer> row(String writtenNumber) {
        return records.row(writtenNumber).filter(shown::animal);
    }

    /** The row of an animal by the id of any of its records, shown or not; {@link Pedigree#UNKNOWN} for one that does not count. */
    public int row(UUID animalId) {
        return records.knows(animalId) ? records.row(animalId) : Pedigree.UNKNOWN;
    }

    public UUID id(int row) {
        return records.animal(row).id();
    }

    /** Whether the asker may see it, and not only have it computed with. */
    public boolean isShown(int row) {
        return shown.animal(row);
    }

    /** Whether the asker may see who its parents are. */
    public boolean isParentageShown(int row) {
        return shown.parentage(row);
    }

    /** Whether what is stated of its parents counts, shown or not. */
    public boolean countsParentage(int row) {
        return shown.countsParentage(row);
    }

    /** Whether figures of these animals rest on ancestors, or on parentages, that are not shown. O(ancestors). */
    public boolean restsOnWhatIsNotShown(int... rows) {
        return shown.isLessThan(rows);
    }

    /** Whether figures of the living rest on animals, or on parentages, that are not shown. */
    public boolean poolRestsOnWhatIsNotShown() {
        return shown.isLessThanThePool();
    }

    public String number(int row) {
        return records.animal(row).number();
    }

    /** Code of the node on which it lives; null: on this one, where it has a record. */
    public @Nullable String node(int row) {
        return records.animal(row).node();
    }

    /** Whether it has no number that could be shown, not even where a parentage names it. */
    boolean isNameless(int row) {
        return records.animal(row).isNameless();
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

    /** Where it lives; null while it is in a transfer. Never to be shown. */
    public @Nullable UUID collection(int row) {
        return records.animal(row).collectionId();
    }

    /** The animal as consent has it. */
    public Subject subject(int row) {
        return records.animal(row).subject();
    }

    /** Whose it is. Never to be shown. */
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

    /** The ancestors one generation back that may be shown, the dam first. */
    int[] shownParents(int row) {
        return shown.parents(row);
    }

    /** These rows, and all that descend from one of them as far as the asker sees who descends from whom. O(population). */
    public BitSet withDescendants(BitSet rows) {
        return shown.withDescendants(rows, size());
    }

    /** The dam as the asker sees her: {@link Pedigree#UNKNOWN} where she is not known, or not to be seen. */
    public int shownDam(int row) {
        return named.dam(row);
    }

    /** The one known sire as the asker sees him: {@link Pedigree#UNKNOWN} where there are several, none, or he is not to be seen. */
    public int shownSire(int row) {
        return named.oneSire(row);
    }

    /** The sire as the asker sees him. */
    StatedSire sire(int row) {
        return named.sire(row);
    }

    /** Whether it has no sire at all, which is not the same as that nobody knows him. */
    public boolean fatherless(int row) {
        var sire = parents.uncertainSire().get(row);
        return sire != null && sire.kind().equals("none");
    }

    /**
     * The animals whose doubtful sire the figures of these rest on, as far as that may be seen: of these and all their
     * ancestors, by number.
     * O(ancestors), O(1) where no sire is doubtful.
     */
    public List<String> doubtfulSiresOf(int... rows) {
        return Arrays.stream(doubtful.above(rows))
                .filter(row -> isShown(row) && isParentageShown(row))
                .mapToObj(this::number)
                .toList();
    }

    /** The pedigree where every doubtful sire is unknown; the first question builds it. */
    Pedigree ifDoubtfulSiresUnknown() {
        return doubtful.ifUnknown();
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
