package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A snapshot that is carried on from entry to entry is, to the last bit, the one that is read anew. */
class SnapshotAfterTest {
    private static final UUID HERE = UUID.randomUUID();
    private static final UUID THERE = UUID.randomUUID();

    private final List<PedigreeRow> records = new ArrayList<>();
    private Random random = new Random(1);

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void births_deaths_and_moves_are_added_one_by_one(long seed) {
        random = new Random(seed);
        IntStream.range(0, 12).forEach(founder -> records.add(founder()));
        var snapshot = Snapshot.of(1, records);
        for (int head = 2; head < 120; head++) {
            snapshot = snapshot.after(head, somethingHappens()).orElseThrow();
            if (head % 10 == 0) {
                isTheSame(snapshot, Snapshot.of(head, records));
            }
        }
    }

    @Test
    void a_population_may_begin_empty() {
        var empty = Snapshot.of(1, records);
        records.add(founder());
        isTheSame(empty.after(2, records).orElseThrow(), Snapshot.of(2, records));
    }

    @Test
    void an_entry_that_touches_no_animal_moves_the_head_alone() {
        records.add(founder());
        var before = Snapshot.of(1, records);
        var after = before.after(2, List.of()).orElseThrow();
        assertThat(after.head()).isEqualTo(2);
        assertThat(after.pedigree()).isSameAs(before.pedigree());
    }

    @Test
    void a_move_leaves_pedigree_and_pool_as_they_are() {
        records.add(founder());
        var before = Snapshot.of(1, records);
        var after = before.after(2, List.of(moved(0))).orElseThrow();
        assertThat(after.collection(0)).isEqualTo(THERE);
        assertThat(before.collection(0)).isEqualTo(HERE);
        assertThat(after.pedigree()).isSameAs(before.pedigree());
        assertThat(after.pool().orElseThrow()).isSameAs(before.pool().orElseThrow());
    }

    @Test
    void an_animal_in_dispute_is_with_nobody_until_it_is_with_somebody_again() {
        records.add(founder());
        var before = Snapshot.of(1, records);
        var disputed = before.after(2, List.of(inDispute(records.get(0)))).orElseThrow();
        assertThat(disputed.collection(0)).isNull();
        assertThat(disputed.owner(0)).isNull();
        assertThat(disputed.pool().orElseThrow()).isSameAs(before.pool().orElseThrow());
        var settled = disputed.after(3, List.of(moved(0))).orElseThrow();
        assertThat(settled.collection(0)).isEqualTo(THERE);
        assertThat(settled.owner(0)).isEqualTo(HERE);
    }

    @Test
    void a_corrected_parentage_has_all_read_anew() {
        IntStream.range(0, 3).forEach(founder -> records.add(founder()));
        records.add(
                young(new Sire.Known(records.get(1).id(), false), records.get(0).id()));
        var corrected = with(records.get(3), true, HERE, Origin.CAPTIVE_BRED, null, 2);
        assertThat(Snapshot.of(1, records).after(2, List.of(corrected))).isEmpty();
    }

    @Test
    void what_rests_on_a_doubtful_sire_is_known_when_births_are_added() {
        IntStream.range(0, 3).forEach(founder -> records.add(founder()));
        var before = Snapshot.of(1, records);
        var half =
                young(new Sire.Known(records.get(0).id(), true), records.get(1).id());
        records.add(half);
        records.add(
                young(new Sire.Known(records.get(0).id(), false), records.get(2).id()));
        var after = before.after(2, records.subList(3, 5)).orElseThrow();

        assertThat(before.doubtfulSiresOf(0, 1)).isEmpty();
        assertThat(after.doubtfulSiresOf(4)).isEmpty();
        assertThat(after.doubtfulSiresOf(3, 4)).containsExactly(half.number());
        // half siblings, by hand
        assertThat(after.pedigree().kinship(3, 4)).isEqualTo(1 / 8.0);
        assertThat(after.ifDoubtfulSiresUnknown().kinship(3, 4)).isZero();
        assertThat(after.sire(3).doubtful()).isTrue();
    }

    @Test
    void an_animal_that_is_a_founder_no_longer_has_all_read_anew() {
        records.add(founder());
        var bred = with(records.get(0), true, HERE, Origin.UNKNOWN, null, 1);
        assertThat(Snapshot.of(1, records).after(2, List.of(bred))).isEmpty();
    }

    @Test
    void records_joined_or_parted_have_all_read_anew() {
        records.add(founder());
        records.add(founder());
        var alias = with(
                records.get(1), true, HERE, Origin.WILD_CAUGHT, records.get(0).id(), 1);
        assertThat(Snapshot.of(1, records).after(2, List.of(records.get(0), alias)))
                .isEmpty();

        var joined = Snapshot.of(2, List.of(records.get(0), alias));
        assertThat(joined.after(3, List.of(records.get(1)))).as("parted again").isEmpty();
        assertThat(joined.after(3, List.of(records.get(0))))
                .as("one of two changed")
                .isEmpty();
    }

    @Test
    void a_number_that_stands_before_others_has_all_read_anew() {
        records.add(founder());
        records.add(founder());
        assertThat(Snapshot.of(1, records.subList(1, 2)).after(2, List.of(records.get(0))))
                .isEmpty();
    }

    // ── what happens ─────────────────────────────────────────────────────────────────────────────────────────────────

    private List<PedigreeRow> somethingHappens() {
        return switch (random.nextInt(6)) {
            case 0 -> List.of(died(random.nextInt(records.size())));
            case 1 -> List.of(moved(random.nextInt(records.size())));
            case 2 -> litter(new Sire.Known(any(), random.nextInt(3) == 0));
            case 3 -> litter(candidates(UUID.randomUUID()));
            case 4 -> litter(candidates(null));
            default -> litter(random.nextBoolean() ? new Sire.Unknown() : new Sire.None("terminal", "0.25"));
        };
    }

    private UUID any() {
        return records.get(random.nextInt(records.size())).id();
    }

    private Sire candidates(@Nullable UUID draw) {
        var one = any();
        var other = any();
        return one.equals(other)
                ? new Sire.Known(one, false)
                : new Sire.Candidates(List.of(new Sire.Candidate(one, "0.5"), new Sire.Candidate(other, "0.25")), draw);
    }

    private List<PedigreeRow> litter(Sire sire) {
        var dam = any();
        while (sire.animalIds().contains(dam)) {
            dam = any();
        }
        var litter = new ArrayList<PedigreeRow>();
        for (int young = random.nextInt(4); young >= 0; young--) {
            var record = young(sire, dam);
            boolean twin = !litter.isEmpty() && random.nextInt(4) == 0;
            records.add(twin ? twinOf(litter.get(litter.size() - 1), record) : record);
            litter.add(records.get(records.size() - 1));
        }
        return litter;
    }

    private PedigreeRow died(int row) {
        var record = records.get(row);
        return replaced(row, with(record, false, HERE, record.origin(), null, 1));
    }

    private PedigreeRow moved(int row) {
        var record = records.get(row);
        return replaced(row, with(record, record.alive(), THERE, record.origin(), null, 1));
    }

    private PedigreeRow replaced(int row, PedigreeRow record) {
        records.set(row, record);
        return record;
    }

    private PedigreeRow founder() {
        return record(Origin.WILD_CAUGHT, null, new Sire.Unknown());
    }

    private PedigreeRow young(Sire sire, UUID dam) {
        return record(Origin.CAPTIVE_BRED, dam, sire);
    }

    private PedigreeRow record(Origin origin, @Nullable UUID dam, Sire sire) {
        var number = new StudbookNumber("MC", "H", records.size() + 1).toString();
        var id = new UUID(random.nextLong(), random.nextLong());
        var born = LocalDate.of(2020, 6, 1);
        return new PedigreeRow(
                id,
                number,
                Sex.UNKNOWN,
                "2020-06-01",
                born,
                born,
                true,
                null,
                origin,
                dam,
                sire,
                HERE,
                HERE,
                null,
                null,
                1);
    }

    private static PedigreeRow twinOf(PedigreeRow other, PedigreeRow record) {
        return new PedigreeRow(
                record.id(),
                record.number(),
                record.sex(),
                record.born(),
                record.bornEarliest(),
                record.bornLatest(),
                record.alive(),
                record.diedEarliest(),
                record.origin(),
                record.damId(),
                record.sire(),
                record.collectionId(),
                record.ownerCollectionId(),
                record.sameAsId(),
                other.id(),
                record.parentageSeq());
    }

    /** As the register tells it then: neither where it is nor whose. */
    private static PedigreeRow inDispute(PedigreeRow record) {
        return new PedigreeRow(
                record.id(),
                record.number(),
                record.sex(),
                record.born(),
                record.bornEarliest(),
                record.bornLatest(),
                record.alive(),
                record.diedEarliest(),
                record.origin(),
                record.damId(),
                record.sire(),
                null,
                null,
                record.sameAsId(),
                record.twinOfId(),
                record.parentageSeq());
    }

    private static PedigreeRow with(
            PedigreeRow record, boolean alive, UUID collection, Origin origin, @Nullable UUID sameAs, long stated) {
        return new PedigreeRow(
                record.id(),
                record.number(),
                record.sex(),
                record.born(),
                record.bornEarliest(),
                record.bornLatest(),
                alive,
                alive ? null : LocalDate.of(2024, 1, 1),
                origin,
                record.damId(),
                record.sire(),
                collection,
                record.ownerCollectionId(),
                sameAs,
                record.twinOfId(),
                stated);
    }

    // ── comparing ────────────────────────────────────────────────────────────────────────────────────────────────────

    private static void isTheSame(Snapshot carried, Snapshot read) {
        assertThat(carried.head()).isEqualTo(read.head());
        assertThat(carried.living()).isEqualTo(read.living());
        assertThat(carried.pedigree().inbreeding()).isEqualTo(read.pedigree().inbreeding());
        assertThat(carried.pedigree().knownFractions())
                .isEqualTo(read.pedigree().knownFractions());
        assertThat(carried.pool().orElseThrow().meanKinships())
                .isEqualTo(read.pool().orElseThrow().meanKinships());
        assertThat(AncestryViews.genePool(carried)).isEqualTo(AncestryViews.genePool(read));
        int last = read.size() - 1;
        for (int row = 0; row < read.size(); row++) {
            assertThat(AncestryViews.ancestry(carried, row, 20)).isEqualTo(AncestryViews.ancestry(read, row, 20));
            assertThat(AncestryViews.kinship(carried, row, last)).isEqualTo(AncestryViews.kinship(read, row, last));
            assertThat(carried.pedigree().kinship(row, last))
                    .isEqualTo(read.pedigree().kinship(row, last));
            assertThat(carried.ifDoubtfulSiresUnknown().kinship(row, last))
                    .isLessThanOrEqualTo(carried.pedigree().kinship(row, last) + 1e-15);
            assertThat(carried.collection(row)).isEqualTo(read.collection(row));
            assertThat(carried.row(read.number(row))).contains(row);
        }
    }
}
