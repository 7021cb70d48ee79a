package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.ancestry.PoolOverTime.AgeGroup;
import org.demebook.ancestry.PoolOverTime.YearEnd;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.kinship.Convention;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A pool over time, against its definition on random registers, and by hand. */
class OverTimeTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 28);
    private static final int REGISTERS = 100;
    private static final int ANIMALS = 20;

    @Test
    void every_year_is_what_the_definition_says_of_its_last_day() {
        int years = 0;
        for (int seed = 0; seed < REGISTERS; seed++) {
            var records = records(new Random(seed));
            var snapshot = SnapshotOf.whole(records);
            for (var end : OverTime.of(snapshot, TODAY).course()) {
                var rows = end.on().equals(TODAY) ? snapshot.living() : livingOn(records, end.on());
                assertThat(end.living()).as("seed %d, %s", seed, end.on()).isEqualTo(rows.length);
                if (rows.length > 0) {
                    years++;
                    assertThat(end.geneDiversity()).isCloseTo(diversity(snapshot, rows, false), within(1e-12));
                    assertThat(end.geneDiversityIfUnknownAreSiblings())
                            .isCloseTo(diversity(snapshot, rows, true), within(1e-12));
                }
            }
        }
        assertThat(years).isGreaterThan(1_000);
    }

    @Test
    void the_course_has_every_year_since_the_first_known_life_and_ends_today() {
        var course = OverTime.of(SnapshotOf.whole(family()), TODAY).course();
        assertThat(course.stream().map(YearEnd::on))
                .startsWith(LocalDate.of(2015, 12, 31), LocalDate.of(2016, 12, 31))
                .endsWith(LocalDate.of(2025, 12, 31), TODAY)
                .hasSize(12);
    }

    @Test
    void gene_diversity_of_a_family_by_hand() {
        var course = OverTime.of(SnapshotOf.whole(family()), TODAY).course();
        assertThat(at(course, 2019)).isEqualTo(new YearEnd(LocalDate.of(2019, 12, 31), 2, .75, .75, 1.0));
        // with itself ½ four times, parent and young ¼ eight times, siblings ¼ twice: (2 + 2 + ½) / 16
        assertThat(at(course, 2020).geneDiversity()).isCloseTo(1 - 4.5 / 16, within(1e-15));
        // the sire died in 2022: three are left, ½ three times, ¼ six times
        assertThat(at(course, 2022).living()).isEqualTo(3);
        assertThat(at(course, 2022).geneDiversity()).isCloseTo(1 - 3.0 / 9, within(1e-15));
    }

    // one dam and one sire bred: Ne = 4·1·1/2 = 2, and ¾ of gene diversity is left after a generation of five years
    @Test
    void what_drift_leaves_is_reckoned_from_who_bred_within_a_generation() {
        var drift = OverTime.of(SnapshotOf.whole(family()), LocalDate.of(2024, 6, 1))
                .drift();
        assertThat(drift.generationYears()).isCloseTo(5, within(.01));
        assertThat(List.of(drift.dams(), drift.sires())).containsExactly(1, 1);
        assertThat(drift.effectiveSize()).isEqualTo(2);
        assertThat(drift.effectiveSizeByInbreeding()).isNull();
        assertThat(drift.ahead()).hasSize(15);
        var generationOn = drift.ahead().get(4);
        assertThat(generationOn.year()).isEqualTo(2029);
        assertThat(generationOn.geneDiversity()).isCloseTo(.75 * 2 / 3, within(1e-3));
        assertThat(generationOn.low()).isEqualTo(generationOn.high()).isEqualTo(generationOn.geneDiversity());
    }

    @Test
    void nothing_is_said_of_the_years_ahead_where_nobody_bred_within_a_generation() {
        assertThat(OverTime.of(SnapshotOf.whole(family()), TODAY).drift()).isNull();
    }

    // F of the first young is 0, that of young of full siblings ¼: the rate is ¼, and Ne by it 2
    @Test
    void where_inbreeding_rises_the_effective_size_follows_from_that_too() {
        var records = family();
        records.set(3, female(records.get(3)));
        records.add(record(4, LocalDate.of(2025, 6, 1), 0, true, null, records.get(3), records.get(2)));
        var drift =
                OverTime.of(SnapshotOf.whole(records), LocalDate.of(2025, 6, 2)).drift();
        assertThat(drift.effectiveSizeByInbreeding()).isCloseTo(2, within(1e-12));
    }

    @Test
    void ages_are_in_full_years_by_the_latest_day_of_birth() {
        var records = family();
        records.add(record(4, null, null, true, null, null, null));
        assertThat(OverTime.of(SnapshotOf.whole(records), TODAY).ages())
                .contains(new AgeGroup(6, 6, 2, 0, 0), new AgeGroup(11, 11, 0, 1, 0))
                .endsWith(new AgeGroup(null, null, 1, 0, 0))
                .hasSize(13);
    }

    // its birth would follow from a year in which one more lives
    @Test
    void days_of_an_animal_that_only_counts_change_nothing() {
        int differed = 0;
        for (int seed = 0; seed < REGISTERS; seed++) {
            var register = new RandomRegister(seed, ANIMALS);
            var moved = new ArrayList<PedigreeRow>();
            for (int row = 0; row < ANIMALS; row++) {
                var record = register.records.get(row);
                moved.add(
                        register.may(row, FieldGroup.IDENTITY, Action.READ)
                                ? record
                                : bornOn(record, LocalDate.of(1990, 1, 1 + row)));
            }
            var whole = Snapshot.of(1, register.records);
            var other = Snapshot.of(1, moved);
            assertThat(OverTime.of(other.as(register.sight()), TODAY))
                    .as("seed %d", seed)
                    .isEqualTo(OverTime.of(whole.as(register.sight()), TODAY));
            differed += OverTime.of(other, TODAY).equals(OverTime.of(whole, TODAY)) ? 0 : 1;
        }
        assertThat(differed).isGreaterThan(REGISTERS / 2);
    }

    @Test
    void of_nobody_there_is_nothing_but_today() {
        var time = OverTime.of(SnapshotOf.whole(List.of()), TODAY);
        assertThat(time.course()).containsExactly(new YearEnd(TODAY, 0, null, null, null));
        assertThat(time.ages()).isEmpty();
        assertThat(time.drift()).isNull();
    }

    // ── apart from the code ──────────────────────────────────────────────────────────────────────────────────────────

    private static int[] livingOn(List<PedigreeRow> records, LocalDate day) {
        return IntStream.range(0, records.size())
                .filter(row -> isKnownToLive(records, records.get(row), day))
                .toArray();
    }

    private static boolean isKnownToLive(List<PedigreeRow> records, PedigreeRow animal, LocalDate day) {
        var young = records.stream()
                .filter(other -> animal.id().equals(other.damId())
                        || other.sire() instanceof Sire.Known known
                                && known.sireId().equals(animal.id()))
                .toList();
        boolean begun = animal.bornLatest() != null
                ? !animal.bornLatest().isAfter(day)
                : young.stream()
                        .anyMatch(one ->
                                one.bornLatest() != null && !one.bornLatest().isAfter(day));
        boolean goesOn = animal.alive()
                || (animal.diedEarliest() != null
                        ? animal.diedEarliest().isAfter(day)
                        : young.stream()
                                .anyMatch(one -> one.bornEarliest() != null
                                        && !one.bornEarliest().isBefore(day)));
        return begun && goesOn;
    }

    private static double diversity(Snapshot snapshot, int[] rows, boolean siblings) {
        var pedigree = siblings ? snapshot.pedigree().under(Convention.UNKNOWN_FULL_SIBS) : snapshot.pedigree();
        double sum = 0;
        for (int row : rows) {
            for (int other : rows) {
                sum += pedigree.kinship(row, other);
            }
        }
        return 1 - sum / rows.length / rows.length;
    }

    private static List<PedigreeRow> records(Random random) {
        var records = new ArrayList<PedigreeRow>();
        for (int row = 0; row < ANIMALS; row++) {
            var dam = row < 4 || random.nextInt(6) == 0 ? null : records.get(random.nextInt(row));
            var sire = row < 4 || random.nextInt(6) == 0 ? null : records.get(random.nextInt(row));
            var born = random.nextInt(4) == 0 ? null : LocalDate.of(2005 + row, 1 + random.nextInt(12), 28);
            boolean alive = random.nextBoolean();
            var died = alive || random.nextBoolean()
                    ? null
                    : LocalDate.of(2010 + random.nextInt(16), 12, 30 + random.nextInt(2));
            records.add(record(row, born, random.nextInt(400), alive, died, dam, sire));
        }
        return records;
    }

    /** Two founders, and two young of theirs. */
    private static List<PedigreeRow> family() {
        var records = new ArrayList<PedigreeRow>();
        records.add(record(0, LocalDate.of(2015, 6, 1), 0, false, LocalDate.of(2022, 3, 4), null, null));
        records.add(record(1, LocalDate.of(2015, 6, 1), 0, true, null, null, null));
        for (int row = 2; row < 4; row++) {
            records.add(record(row, LocalDate.of(2020, 6, 1), 0, true, null, records.get(1), records.get(0)));
        }
        return records;
    }

    private static YearEnd at(List<YearEnd> course, int year) {
        return course.stream()
                .filter(end -> end.on().getYear() == year)
                .findFirst()
                .orElseThrow();
    }

    private static PedigreeRow female(PedigreeRow record) {
        return changed(record, Sex.FEMALE, record.bornEarliest());
    }

    private static PedigreeRow bornOn(PedigreeRow record, LocalDate born) {
        return changed(record, record.sex(), born);
    }

    private static PedigreeRow changed(PedigreeRow record, Sex sex, LocalDate born) {
        return new PedigreeRow(
                record.id(),
                record.number(),
                sex,
                born.toString(),
                born,
                born,
                record.alive(),
                record.diedEarliest(),
                record.origin(),
                record.damId(),
                record.sire(),
                record.collectionId(),
                record.ownerCollectionId(),
                record.sameAsId(),
                record.twinOfId(),
                record.parentageSeq());
    }

    private static PedigreeRow record(
            int row,
            @Nullable LocalDate born,
            @Nullable Integer daysOpen,
            boolean alive,
            @Nullable LocalDate died,
            @Nullable PedigreeRow dam,
            @Nullable PedigreeRow sire) {
        return new PedigreeRow(
                new UUID(1, row),
                new StudbookNumber("MC", "H", row + 1L).toString(),
                row == 1 ? Sex.FEMALE : Sex.MALE,
                born == null ? null : born.toString(),
                born,
                born == null || daysOpen == null ? null : born.plusDays(daysOpen),
                alive,
                died,
                dam == null && sire == null && row % 3 < 2 ? Origin.WILD_CAUGHT : Origin.CAPTIVE_BRED,
                dam == null ? null : dam.id(),
                sire == null ? new Sire.Unknown() : new Sire.Known(sire.id(), false),
                null,
                null,
                null,
                null,
                1);
    }
}
