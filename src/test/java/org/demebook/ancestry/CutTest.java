package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Pattern;
import org.demebook.Thorough;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.junit.jupiter.api.Test;

/** What somebody is shown, and every figure, follows from what is granted to them alone: on random registers and grants. */
class CutTest {
    private static final int REGISTERS = Thorough.size("demebook.registers", 300, 3_000);
    private static final int ANIMALS = 24;
    private static final Pattern NUMBER = Pattern.compile("MC-H-\\d+-\\w");

    @Test
    void what_is_not_granted_may_be_stated_otherwise_and_no_answer_changes() {
        int differed = 0;
        for (int seed = 0; seed < REGISTERS; seed++) {
            var register = new RandomRegister(seed, ANIMALS);
            var sight = register.sight();
            var answers = answers(Snapshot.of(1, register.records).as(sight));
            var other = register.withOtherSecrets();
            assertThat(answers(Snapshot.of(2, other).as(sight)))
                    .as("seed %d", seed)
                    .isEqualTo(answers);
            if (!answers(Snapshot.of(2, other)).equals(answers(Snapshot.of(1, register.records)))) {
                differed++;
            }
        }
        // the secrets matter to who may see all
        assertThat(differed).isGreaterThan(REGISTERS * 9 / 10);
    }

    @Test
    void every_figure_is_to_the_bit_that_of_a_register_in_which_nothing_else_was_ever_stated() {
        for (int seed = 0; seed < REGISTERS; seed++) {
            var register = new RandomRegister(seed, ANIMALS);
            var seen = Snapshot.of(1, register.records).as(register.sight());
            var stated = Snapshot.of(1, onlyGranted(register));
            assertThat(numbers(seen)).as("seed %d", seed).isEqualTo(numbers(stated));
            for (int row = 0; row < seen.size(); row++) {
                for (int other = 0; other <= row; other++) {
                    assertThat(seen.pedigree().kinship(row, other))
                            .as("seed %d, %s and %s", seed, seen.number(row), seen.number(other))
                            .isEqualTo(stated.pedigree().kinship(row, other));
                }
            }
            assertThat(seen.living()).isEqualTo(stated.living());
            seen.pool().ifPresent(pool -> {
                var expected = stated.pool().orElseThrow();
                assertThat(pool.meanKinship()).isEqualTo(expected.meanKinship());
                assertThat(pool.meanKinships()).isEqualTo(expected.meanKinships());
                assertThat(pool.founderContributions().shares())
                        .isEqualTo(expected.founderContributions().shares());
            });
        }
    }

    @Test
    void no_number_is_told_but_of_animals_that_are_shown_and_of_parents_that_a_shown_parentage_names() {
        int told = 0;
        for (int seed = 0; seed < REGISTERS; seed++) {
            var register = new RandomRegister(seed, ANIMALS);
            var numbers = new HashSet<String>();
            for (int row = 0; row < ANIMALS; row++) {
                if (register.may(row, FieldGroup.IDENTITY, Action.READ)) {
                    var record = register.records.get(row);
                    numbers.add(record.number());
                    if (register.may(row, FieldGroup.PARENTAGE, Action.READ)) {
                        parents(record)
                                .forEach(parent -> numbers.add(register.records
                                        .get(register.row(parent))
                                        .number()));
                    }
                }
            }
            var answers = answers(Snapshot.of(1, register.records).as(register.sight()));
            var found = NUMBER.matcher(answers.toString());
            while (found.find()) {
                assertThat(numbers).as("seed %d", seed).contains(found.group());
                told++;
            }
        }
        assertThat(told).isGreaterThan(10_000);
    }

    @Test
    void only_what_is_shown_is_listed_and_a_flag_says_where_more_counts() {
        int flagged = 0;
        for (int seed = 0; seed < REGISTERS; seed++) {
            var register = new RandomRegister(seed, ANIMALS);
            var seen = Snapshot.of(1, register.records).as(register.sight());
            var readAlone = Snapshot.of(1, register.records)
                    .as(Sight.of(ANIMALS, (row, group, action) -> register.may(row, group, Action.READ)));
            for (int row = 0; row < seen.size(); row++) {
                if (!seen.isShown(row)) {
                    continue;
                }
                var view = AncestryViews.ancestry(seen, row, 20);
                view.ancestors().forEach(listed -> assertThat(
                                register.may(register.row(listed.number()), FieldGroup.IDENTITY, Action.READ))
                        .isTrue());
                // without a flag nothing rests on what is computed with alone
                if (view.throughAncestorsNotShown() == null) {
                    int same = readAlone.row(view.animal().number()).orElseThrow();
                    assertThat(AncestryViews.ancestry(readAlone, same, 20)).isEqualTo(view);
                } else {
                    flagged++;
                }
                for (var common : AncestryViews.kinship(seen, row, row).commonAncestors()) {
                    assertThat(register.may(register.row(common), FieldGroup.IDENTITY, Action.READ))
                            .isTrue();
                }
            }
        }
        assertThat(flagged).isGreaterThan(500);
    }

    @Test
    void of_an_animal_that_is_not_shown_there_is_no_row_to_be_asked_for() {
        var register = new RandomRegister(1, ANIMALS);
        var seen = Snapshot.of(1, register.records).as(register.sight());
        for (int row = 0; row < ANIMALS; row++) {
            assertThat(seen.row(register.records.get(row).number()).isPresent())
                    .isEqualTo(register.may(row, FieldGroup.IDENTITY, Action.READ));
        }
    }

    @Test
    void who_may_see_everything_has_the_population_itself() {
        var whole = Snapshot.of(1, new RandomRegister(1, ANIMALS).records);
        assertThat(whole.as(Sight.of(ANIMALS, (row, fieldGroup, action) -> true)))
                .isSameAs(whole);
        var computed = whole.as(Sight.of(ANIMALS, (row, fieldGroup, action) -> action == Action.COMPUTE));
        assertThat(computed).isNotSameAs(whole);
        assertThat(computed.pool().orElseThrow().meanKinships())
                .isEqualTo(whole.pool().orElseThrow().meanKinships());
        assertThat(computed.poolRestsOnWhatIsNotShown()).isTrue();
    }

    @Test
    void a_merged_record_is_shown_by_those_who_show_the_record_that_stands() {
        var register = new RandomRegister(3, ANIMALS);
        var standing = register.records.get(7);
        var alias = register.records.get(20);
        register.records.set(20, sameAs(standing, alias));
        var whole = Snapshot.of(1, register.records);
        int row = whole.row(standing.number()).orElseThrow();
        for (boolean shown : new boolean[] {true, false}) {
            var seen = whole.as(Sight.of(whole.size(), (other, fieldGroup, action) -> other == row ? shown : !shown));
            assertThat(seen.row(alias.number()).isPresent()).isEqualTo(shown);
            assertThat(seen.row(standing.number()).isPresent()).isEqualTo(shown);
        }
    }

    // ── what is asked, and the register that only ever heard what is granted ─────────────────────────────────────────

    /** Every answer of every kind, by question, that a snapshot's asker can get. */
    private static TreeMap<String, String> answers(Snapshot snapshot) {
        var answers = new TreeMap<String, String>();
        answers.put("gene pool", AncestryViews.genePool(snapshot).toString());
        for (int row = 0; row < snapshot.size(); row++) {
            if (!snapshot.isShown(row)) {
                continue;
            }
            answers.put(
                    snapshot.number(row),
                    AncestryViews.ancestry(snapshot, row, 20).toString());
            for (int other = 0; other < snapshot.size(); other++) {
                if (snapshot.isShown(other)) {
                    answers.put(
                            snapshot.number(row) + " " + snapshot.number(other),
                            AncestryViews.kinship(snapshot, row, other).toString());
                }
            }
        }
        return answers;
    }

    /** Told one by one, as keepers would who never said more than they grant. */
    private static List<PedigreeRow> onlyGranted(RandomRegister register) {
        var named = new HashSet<UUID>();
        for (int row = 0; row < ANIMALS; row++) {
            if (register.parentageCounts(row)) {
                named.addAll(parents(register.records.get(row)));
            }
        }
        var stated = new ArrayList<PedigreeRow>();
        for (int row = 0; row < ANIMALS; row++) {
            var record = register.records.get(row);
            if (!register.counts(row, FieldGroup.IDENTITY)) {
                if (named.contains(record.id())) {
                    stated.add(record.bare());
                }
                continue;
            }
            boolean parentage = register.counts(row, FieldGroup.PARENTAGE);
            var twin = record.twinOfId();
            stated.add(new PedigreeRow(
                    record.id(),
                    record.number(),
                    record.sex(),
                    record.born(),
                    record.bornEarliest(),
                    record.bornLatest(),
                    record.alive(),
                    record.diedEarliest(),
                    record.origin(),
                    parentage ? record.damId() : null,
                    parentage ? record.sire() : new Sire.Unknown(),
                    null,
                    null,
                    null,
                    parentage && twin != null && register.parentageCounts(register.row(twin)) ? twin : null,
                    1));
        }
        return stated;
    }

    private static List<UUID> parents(PedigreeRow record) {
        var parents = new ArrayList<>(record.sire().animalIds());
        if (record.damId() != null) {
            parents.add(record.damId());
        }
        return parents;
    }

    private static List<String> numbers(Snapshot snapshot) {
        var numbers = new ArrayList<String>();
        for (int row = 0; row < snapshot.size(); row++) {
            numbers.add(snapshot.number(row));
        }
        return numbers;
    }

    private static PedigreeRow sameAs(PedigreeRow standing, PedigreeRow record) {
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
                standing.id(),
                null,
                record.parentageSeq());
    }
}
