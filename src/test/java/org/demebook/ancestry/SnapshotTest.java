package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class SnapshotTest {
    private final List<PedigreeRow> records = new ArrayList<>();
    private long serials;

    @Test
    void wild_caught_animals_are_founders_and_animals_of_unknown_parents_are_not() {
        var wild = add(founder(Sex.FEMALE));
        var bought = add(record(Sex.MALE, Origin.UNKNOWN, null, new Sire.Unknown()));
        var young = add(young(wild, known(bought)));

        var snapshot = Snapshot.of(7, records);

        assertThat(snapshot.head()).isEqualTo(7);
        assertThat(snapshot.founder(row(snapshot, wild))).isTrue();
        assertThat(snapshot.founder(row(snapshot, bought))).isFalse();
        assertThat(snapshot.pedigree().knownFraction(row(snapshot, young))).isEqualTo(.5);
    }

    @Test
    void a_missing_parent_leaves_half_of_the_genome_unknown() {
        var wild = add(founder(Sex.FEMALE));
        var young = add(young(wild, new Sire.Unknown()));

        var snapshot = Snapshot.of(1, records);

        assertThat(snapshot.pedigree().knownFraction(row(snapshot, young))).isEqualTo(.5);
        assertThat(snapshot.sires(row(snapshot, young))).isEmpty();
    }

    // Littermates out of a dam unrelated to the candidates, by S1 .5, S2 .3, S3 .2: founders, so unrelated themselves.
    // One sire: ¼·½ (dam) + ¼·½ (himself) = ¼. A draw for each: ¼·½ + ¼·½·(.25 + .09 + .04) = .1725. By hand.
    @Test
    void young_of_one_draw_share_their_sire_and_young_of_no_draw_may_not() {
        var dam = add(founder(Sex.FEMALE));
        var sires = List.of(add(founder(Sex.MALE)), add(founder(Sex.MALE)), add(founder(Sex.MALE)));
        var draw = UUID.randomUUID();
        var one = add(young(dam, candidates(sires, draw)));
        var two = add(young(dam, candidates(sires, draw)));
        var three = add(young(dam, candidates(sires, null)));
        var four = add(young(dam, candidates(sires, null)));

        var snapshot = Snapshot.of(1, records);

        assertThat(kinship(snapshot, one, two)).isCloseTo(.25, within(1e-15));
        assertThat(kinship(snapshot, three, four)).isCloseTo(.1725, within(1e-15));
        assertThat(snapshot.sire(row(snapshot, one)).wholeLitter()).isTrue();
        assertThat(snapshot.sire(row(snapshot, three)).candidates()).hasSize(3);
    }

    @Test
    void a_young_corrected_alone_leaves_the_draw_of_its_litter() {
        var dam = add(founder(Sex.FEMALE));
        var sires = List.of(add(founder(Sex.MALE)), add(founder(Sex.MALE)), add(founder(Sex.MALE)));
        var draw = UUID.randomUUID();
        var one = add(young(dam, candidates(sires, draw)));
        var corrected = add(young(
                dam, new Sire.Candidates(List.of(new Sire.Candidate(sires.get(2).id(), "1")), draw)));

        var snapshot = Snapshot.of(1, records);

        // ¼·½ (dam) + ¼·½·.2: the third male sired the other with probability .2
        assertThat(kinship(snapshot, one, corrected)).isCloseTo(.125 + .025, within(1e-15));
    }

    // F of a fatherless young of a non-inbred dam by terminal fusion is 1 − y, and its kinship with its dam is ½.
    @Test
    void a_fatherless_young_descends_from_its_dam_alone() {
        var dam = add(founder(Sex.FEMALE));
        var whole = add(young(dam, new Sire.None("terminal", "0")));
        var crossed = add(young(dam, new Sire.None("terminal", "0.25")));

        var snapshot = Snapshot.of(1, records);

        assertThat(snapshot.pedigree().inbreeding(row(snapshot, whole))).isEqualTo(1);
        assertThat(snapshot.pedigree().inbreeding(row(snapshot, crossed))).isEqualTo(.75);
        assertThat(kinship(snapshot, dam, whole)).isEqualTo(.5);
        assertThat(snapshot.sire(row(snapshot, whole)).kind()).isEqualTo("none");
        assertThat(snapshot.sires(row(snapshot, whole))).isEmpty();
    }

    // self-kinship is (1 + F) / 2: Emik & Terrill (1949) by way of kinship's own tests; identical twins are one genome
    @Test
    void identical_twins_are_to_each_other_what_an_animal_is_to_itself() {
        var dam = add(founder(Sex.FEMALE));
        var sire = add(founder(Sex.MALE));
        var son = add(young(dam, known(sire)));
        var one = add(young(dam, known(son))); // mother and son: F = ¼
        var twin = add(twinOf(one, young(dam, known(son))));
        var sister = add(young(dam, known(son)));

        var snapshot = Snapshot.of(1, records);

        assertThat(kinship(snapshot, one, twin)).isEqualTo(.625);
        assertThat(snapshot.pedigree().inbreeding(row(snapshot, twin))).isEqualTo(.25);
        assertThat(kinship(snapshot, twin, sister)).isEqualTo(kinship(snapshot, one, sister));
        assertThat(snapshot.dam(row(snapshot, twin))).isEqualTo(row(snapshot, dam));
        assertThat(snapshot.sires(row(snapshot, twin))).containsExactly(row(snapshot, son));
    }

    @Test
    void twins_of_two_possible_sires_have_one_and_the_same() {
        var dam = add(founder(Sex.FEMALE));
        var either = List.of(add(founder(Sex.MALE)), add(founder(Sex.MALE)));
        var candidates = new Sire.Candidates(
                List.of(
                        new Sire.Candidate(either.get(0).id(), "0.5"),
                        new Sire.Candidate(either.get(1).id(), "0.5")),
                null);
        var one = add(young(dam, candidates));
        var twin = add(twinOf(one, young(dam, candidates)));

        var snapshot = Snapshot.of(1, records);

        assertThat(kinship(snapshot, one, twin)).isEqualTo(.5);
        assertThat(snapshot.sire(row(snapshot, twin)).candidates()).hasSize(2);
    }

    @Test
    void a_twin_that_was_found_to_be_the_same_animal_is_one_animal() {
        var dam = add(founder(Sex.FEMALE));
        var one = add(young(dam, known(add(founder(Sex.MALE)))));
        add(sameAs(one, twinOf(one, young(dam, new Sire.Unknown()))));

        var snapshot = Snapshot.of(1, records);

        assertThat(snapshot.size()).isEqualTo(3);
        assertThat(snapshot.pedigree().inbreeding(row(snapshot, one))).isZero();
    }

    @Test
    void merged_records_are_one_animal_under_each_of_their_numbers() {
        var dam = add(founder(Sex.FEMALE));
        var sire = add(founder(Sex.MALE));
        var canonical = add(record(Sex.UNKNOWN, Origin.UNKNOWN, null, new Sire.Unknown()));
        var alias = add(sameAs(canonical, young(dam, known(sire))));
        var aliasOfAlias = add(sameAs(alias, record(Sex.MALE, Origin.UNKNOWN, null, new Sire.Unknown())));
        var young = add(young(dam, known(aliasOfAlias)));

        var snapshot = Snapshot.of(1, records);

        assertThat(snapshot.size()).isEqualTo(4);
        int row = row(snapshot, canonical);
        assertThat(row(snapshot, alias)).isEqualTo(row);
        assertThat(row(snapshot, aliasOfAlias)).isEqualTo(row);
        assertThat(snapshot.number(row)).isEqualTo(canonical.number());
        assertThat(snapshot.sires(row(snapshot, young))).containsExactly(row);
        // mother and son: ¼
        assertThat(snapshot.pedigree().inbreeding(row(snapshot, young))).isEqualTo(.25);
    }

    @Test
    void the_record_that_stands_for_an_animal_is_filled_from_the_other_but_never_with_a_parent_of_each() {
        var dam = add(founder(Sex.FEMALE));
        var otherDam = add(founder(Sex.FEMALE));
        var sire = add(founder(Sex.MALE));
        var canonical = add(record(Sex.UNKNOWN, Origin.CAPTIVE_BRED, dam.id(), new Sire.Unknown()));
        var alias = young(otherDam, known(sire));
        add(sameAs(canonical, dead(alias)));

        var snapshot = Snapshot.of(1, records);

        int row = row(snapshot, canonical);
        assertThat(snapshot.dam(row)).isEqualTo(row(snapshot, dam));
        assertThat(snapshot.sires(row)).isEmpty();
        assertThat(snapshot.sex(row)).isEqualTo(Sex.FEMALE);
        assertThat(snapshot.bornLatest(row)).isEqualTo(LocalDate.of(2020, 6, 1));
        assertThat(snapshot.alive(row)).as("a death on either record counts").isFalse();
        assertThat(snapshot.living()).doesNotContain(row);
    }

    @Test
    void candidates_that_were_found_to_be_one_animal_count_together() {
        var dam = add(founder(Sex.FEMALE));
        var male = add(founder(Sex.MALE));
        var again = add(sameAs(male, record(Sex.MALE, Origin.UNKNOWN, null, new Sire.Unknown())));
        var either = List.of(new Sire.Candidate(male.id(), "0.25"), new Sire.Candidate(again.id(), "0.75"));
        var young = add(young(dam, new Sire.Candidates(either, null)));

        var snapshot = Snapshot.of(1, records);

        assertThat(snapshot.sire(row(snapshot, young)).candidates()).hasSize(1);
        assertThat(kinship(snapshot, male, young)).isEqualTo(.25);
    }

    @Test
    void a_population_without_animals_has_no_pool() {
        var snapshot = Snapshot.of(2, records);
        assertThat(snapshot.size()).isZero();
        assertThat(snapshot.pool()).isEmpty();
    }

    // ── records ──────────────────────────────────────────────────────────────────────────────────────────────────────

    private PedigreeRow add(PedigreeRow record) {
        records.add(record);
        return record;
    }

    private PedigreeRow founder(Sex sex) {
        return record(sex, Origin.WILD_CAUGHT, null, new Sire.Unknown());
    }

    private PedigreeRow young(PedigreeRow dam, Sire sire) {
        return record(Sex.FEMALE, Origin.CAPTIVE_BRED, dam.id(), sire);
    }

    private PedigreeRow record(Sex sex, Origin origin, @Nullable UUID damId, Sire sire) {
        var number = new StudbookNumber("MC", "H", ++serials).toString();
        var born = origin == Origin.CAPTIVE_BRED ? LocalDate.of(2020, 6, 1) : null;
        return new PedigreeRow(
                UUID.randomUUID(),
                number,
                sex,
                born == null ? null : born.toString(),
                born,
                born,
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

    private static PedigreeRow sameAs(PedigreeRow canonical, PedigreeRow record) {
        return changed(record, record.alive(), canonical.id());
    }

    private static PedigreeRow twinOf(PedigreeRow other, PedigreeRow record) {
        return with(record, record.alive(), record.sameAsId(), other.id());
    }

    private static PedigreeRow dead(PedigreeRow record) {
        return changed(record, false, record.sameAsId());
    }

    private static PedigreeRow changed(PedigreeRow record, boolean alive, @Nullable UUID sameAsId) {
        return with(record, alive, sameAsId, record.twinOfId());
    }

    private static PedigreeRow with(
            PedigreeRow record, boolean alive, @Nullable UUID sameAsId, @Nullable UUID twinOfId) {
        return new PedigreeRow(
                record.id(),
                record.number(),
                record.sex(),
                record.born(),
                record.bornEarliest(),
                record.bornLatest(),
                alive,
                record.diedEarliest(),
                record.origin(),
                record.damId(),
                record.sire(),
                record.collectionId(),
                record.ownerCollectionId(),
                sameAsId,
                twinOfId,
                record.parentageSeq());
    }

    private static Sire known(PedigreeRow sire) {
        return new Sire.Known(sire.id(), false);
    }

    private static Sire candidates(List<PedigreeRow> sires, @Nullable UUID drawId) {
        return new Sire.Candidates(
                List.of(
                        new Sire.Candidate(sires.get(0).id(), "0.5"),
                        new Sire.Candidate(sires.get(1).id(), "0.3"),
                        new Sire.Candidate(sires.get(2).id(), "0.2")),
                drawId);
    }

    private static int row(Snapshot snapshot, PedigreeRow record) {
        return snapshot.row(record.number()).orElse(Pedigree.UNKNOWN);
    }

    private static double kinship(Snapshot snapshot, PedigreeRow one, PedigreeRow other) {
        return snapshot.pedigree().kinship(row(snapshot, one), row(snapshot, other));
    }
}
