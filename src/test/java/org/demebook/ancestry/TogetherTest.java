package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.Elsewhere;
import org.demebook.registry.Elsewhere.Descent;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Records here and what other nodes told of theirs are one population: that of a node that holds them all, to the last bit. */
class TogetherTest {
    private static final UUID KEEPER = UUID.randomUUID();

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void figures_are_bit_equal_to_those_of_a_node_that_holds_all(long seed) {
        var register = new RandomRegister(seed, 80);
        var here = new ArrayList<PedigreeRow>();
        var there = new ArrayList<PedigreeRow>();
        var arrived = new HashMap<UUID, Descent>();
        var random = new Random(seed);
        for (var record : register.records) {
            if (random.nextBoolean()) {
                there.add(elsewhere(record));
            } else if (random.nextInt(3) == 0) {
                here.add(record.withoutParents());
                arrived.put(record.id(), new Descent(record.damId(), record.sire(), record.origin(), false));
            } else {
                here.add(record);
            }
        }
        Collections.shuffle(there, random);
        var told = new Elsewhere(1, there, arrived, Map.of());

        var together = Snapshot.of(1, Together.of(here, told));

        isTheSame(together, Snapshot.of(1, register.records));
        assertThat(IntStream.range(0, together.size())
                        .filter(row -> together.node(row) != null)
                        .count())
                .isEqualTo(there.size());
    }

    @Test
    void where_nothing_is_told_nothing_is_copied() {
        var here = new RandomRegister(1, 20).records;
        assertThat(Together.of(here, Elsewhere.NOTHING)).isSameAs(here);
    }

    @Test
    void a_parent_of_whom_nothing_is_told_is_unknown() {
        var young = elsewhere(young(UUID.randomUUID(), new Sire.Known(UUID.randomUUID(), false)));
        var snapshot = Snapshot.of(1, Together.of(List.of(), told(young)));
        assertThat(snapshot.dam(0)).isEqualTo(Pedigree.UNKNOWN);
        assertThat(snapshot.sires(0)).isEmpty();
        assertThat(snapshot.pedigree().knownFraction(0)).isZero();
    }

    // a node that lies, or two that are mistaken, must not take the figures of this one down
    @Test
    void a_circle_that_was_told_is_set_aside_whatever_came_first() {
        var grandmother = record(Origin.UNKNOWN, null, new Sire.Unknown());
        var mother = young(grandmother.id(), new Sire.Unknown());
        var unconcerned = elsewhere(young(mother.id(), new Sire.Unknown()));
        var ancestor = elsewhere(young(mother.id(), new Sire.Unknown()));
        var above = new Descent(ancestor.id(), new Sire.Unknown(), Origin.UNKNOWN, false);
        for (var animals : List.of(List.of(ancestor, unconcerned), List.of(unconcerned, ancestor))) {
            var together = Together.of(
                    List.of(grandmother, mother), new Elsewhere(1, animals, Map.of(grandmother.id(), above), Map.of()));
            var snapshot = Snapshot.of(1, together);
            assertThat(snapshot.dam(snapshot.row(mother.id()))).isEqualTo(snapshot.row(grandmother.id()));
            assertThat(snapshot.dam(snapshot.row(unconcerned.id()))).isEqualTo(snapshot.row(mother.id()));
            assertThat(snapshot.dam(snapshot.row(grandmother.id()))).isEqualTo(Pedigree.UNKNOWN);
            assertThat(snapshot.dam(snapshot.row(ancestor.id()))).isEqualTo(Pedigree.UNKNOWN);
        }
    }

    @Test
    void records_that_are_told_to_stand_for_each_other_stand_for_themselves() {
        var one = record(Origin.UNKNOWN, null, new Sire.Unknown());
        var other = record(Origin.UNKNOWN, null, new Sire.Unknown());
        var lost = elsewhere(record(Origin.UNKNOWN, null, new Sire.Unknown())).standingFor(UUID.randomUUID());
        var snapshot = Snapshot.of(
                1,
                Together.of(
                        List.of(),
                        told(
                                elsewhere(one).standingFor(other.id()),
                                elsewhere(other).standingFor(one.id()),
                                lost)));
        // of the two one has to stand for itself for the other to stand for it
        assertThat(snapshot.size()).isEqualTo(2);
        assertThat(snapshot.row(lost.id())).isNotEqualTo(Pedigree.UNKNOWN);
    }

    @Test
    void what_was_told_stays_when_a_record_is_touched() {
        var dam = elsewhere(record(Origin.WILD_CAUGHT, null, new Sire.Unknown()));
        var bought = record(Origin.UNKNOWN, null, new Sire.Unknown());
        var told = new Elsewhere(
                1,
                List.of(dam),
                Map.of(bought.id(), new Descent(dam.id(), new Sire.Unknown(), Origin.CAPTIVE_BRED, true)),
                Map.of());
        var before = Snapshot.of(1, Together.of(List.of(bought), told));

        var after = before.after(2, Together.touched(List.of(bought), told, before.records()))
                .orElseThrow();

        isTheSame(after, Snapshot.of(2, Together.of(List.of(bought), told)));
        assertThat(after.records().animal(after.row(bought.id())))
                .isEqualTo(before.records().animal(before.row(bought.id())));
    }

    @Test
    void a_placeholder_orders_alike_everywhere_and_is_no_node_s_to_issue() {
        var id = UUID.fromString("00000000-0000-4000-8000-00000000002a");
        var number = StudbookNumber.placeholder("MC", id);
        assertThat(number).isEqualTo(StudbookNumber.placeholder("MC", id));
        assertThat(StudbookNumber.isPlaceholder(number.toString())).isTrue();
        assertThat(StudbookNumber.isPlaceholder("MC-H-102-Y")).isFalse();
        assertThat(StudbookNumber.isReserved("0")).isTrue();
        assertThat(StudbookNumber.isReserved("H0")).isFalse();
        assertThat(StudbookNumber.parse(number.toString())).isEqualTo(number);
    }

    private static void isTheSame(Snapshot one, Snapshot other) {
        assertThat(one.size()).isEqualTo(other.size());
        int[] all = IntStream.range(0, one.size()).toArray();
        for (int row : all) {
            assertThat(one.number(row)).isEqualTo(other.number(row));
            assertThat(one.id(row)).isEqualTo(other.id(row));
            assertThat(one.pedigree().inbreeding(row))
                    .isEqualTo(other.pedigree().inbreeding(row));
            assertThat(one.pedigree().knownFraction(row))
                    .isEqualTo(other.pedigree().knownFraction(row));
            assertThat(one.sire(row)).isEqualTo(other.sire(row));
        }
        assertThat(one.pedigree().kinship(all, all)).isEqualTo(other.pedigree().kinship(all, all));
        assertThat(one.living()).isEqualTo(other.living());
        assertThat(one.pool().map(pool -> pool.geneDiversity()))
                .isEqualTo(other.pool().map(pool -> pool.geneDiversity()));
    }

    private static Elsewhere told(PedigreeRow... animals) {
        return new Elsewhere(1, List.of(animals), Map.of(), Map.of());
    }

    private static PedigreeRow young(UUID damId, Sire sire) {
        return record(Origin.CAPTIVE_BRED, damId, sire);
    }

    private static long serials;

    private static PedigreeRow record(Origin origin, @Nullable UUID damId, Sire sire) {
        return new PedigreeRow(
                UUID.randomUUID(),
                new StudbookNumber("MC", "H", ++serials).toString(),
                Sex.FEMALE,
                null,
                null,
                null,
                true,
                null,
                origin,
                damId,
                sire,
                null,
                null,
                null,
                null,
                1);
    }

    private static PedigreeRow elsewhere(PedigreeRow record) {
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
                KEEPER,
                KEEPER,
                record.sameAsId(),
                record.twinOfId(),
                record.parentageSeq(),
                "U",
                false);
    }
}
