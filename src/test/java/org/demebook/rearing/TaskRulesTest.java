package org.demebook.rearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.rearing.Entries.day;
import static org.demebook.rearing.Entries.mass;
import static org.demebook.rearing.Entries.moved;
import static org.demebook.rearing.Entries.quarantine;
import static org.demebook.rearing.Entries.refused;
import static org.demebook.rearing.Entries.shed;
import static org.demebook.rearing.Entries.taken;
import static org.demebook.rearing.Entries.test;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.care.CareKind;
import org.demebook.care.CareTask;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.Diary;
import org.demebook.rearing.TaskRules.InCare;
import org.demebook.taxon.TaxonProfile;
import org.junit.jupiter.api.Test;

/**
 * What is to be done after a birth on 2026-06-29. The days are those of a calendar: 7 days later is 6 July, 10 is 9 July, 14
 * is 13 July, 21 is 20 July; the rules are common practice, with no source.
 */
class TaskRulesTest {
    private static final LocalDate BORN = day("2026-06-29");
    private static final UUID YOUNG = UUID.fromString("01890a5d-ac96-774b-bcce-b302099a8057");
    private static final UUID LITTER = UUID.fromString("01890a5d-ac96-774b-bcce-b302099a8058");
    private static final UUID DAM = UUID.fromString("01890a5d-ac96-774b-bcce-b302099a8059");

    @Test
    void the_first_shed_is_looked_for_from_the_7th_to_the_21st_day() {
        var task = only(CareKind.FIRST_SHED_CHECK, of("2026-07-01", young()));

        assertThat(task.key()).isEqualTo("first-shed:" + YOUNG);
        assertThat(task.fromOn()).isEqualTo("2026-07-06");
        assertThat(task.dueOn()).isEqualTo("2026-07-13");
        assertThat(task.untilOn()).isEqualTo("2026-07-20");
        assertThat(task.why()).contains("2026-06-29").contains("reptile veterinarian");
    }

    @Test
    void the_first_meal_is_offered_from_the_10th_day_or_after_a_later_shed() {
        var early = only(CareKind.FIRST_MEAL, of("2026-07-07", young(shed("2026-07-07"))));
        var late = only(CareKind.FIRST_MEAL, of("2026-07-12", young(shed("2026-07-12"))));

        assertThat(early.dueOn()).isEqualTo("2026-07-09");
        assertThat(early.untilOn()).isEqualTo("2026-07-20");
        assertThat(late.dueOn()).isEqualTo("2026-07-12");
        assertThat(late.key()).isEqualTo(early.key()).isEqualTo("first-meal:" + YOUNG);
        assertThat(late.why()).contains("shed on 2026-07-12");
    }

    @Test
    void what_was_written_down_is_no_task_any_more() {
        var kinds = kinds(of("2026-07-15", young(shed("2026-07-08"), refused("2026-07-10"))));

        assertThat(kinds).containsExactlyInAnyOrder(CareKind.NEXT_MEAL, CareKind.PHOTOGRAPH);
    }

    @Test
    void the_next_meal_follows_the_profile_until_the_animal_has_a_rhythm_of_its_own() {
        var profile = only(CareKind.NEXT_MEAL, of("2026-07-15", young(taken("2026-07-10"))));
        var own = only(
                CareKind.NEXT_MEAL,
                of(
                        "2026-07-25",
                        young(taken("2026-07-10"), taken("2026-07-15"), refused("2026-07-20"), taken("2026-07-25"))));

        assertThat(profile.dueOn()).isEqualTo("2026-07-17");
        assertThat(profile.key()).isEqualTo("next-meal:%s:2026-07-10".formatted(YOUNG));
        assertThat(own.dueOn()).isEqualTo("2026-07-30");
        assertThat(own.why()).contains("about every 5 days");
    }

    @Test
    void a_photograph_is_taken_within_a_week_of_the_first_shed() {
        assertThat(only(CareKind.PHOTOGRAPH, of("2026-07-09", young(shed("2026-07-08"))))
                        .dueOn())
                .isEqualTo("2026-07-15");
        assertThat(kinds(of("2026-07-09", new InCare(YOUNG, BORN, LITTER, 1, Diary.of(shed("2026-07-08"))))))
                .doesNotContain(CareKind.PHOTOGRAPH);
        assertThat(kinds(of("2026-07-09", young()))).doesNotContain(CareKind.PHOTOGRAPH);
    }

    @Test
    void a_young_that_came_without_a_diary_is_not_asked_for_its_first_days() {
        assertThat(of("2026-08-24", young())).isNotEmpty();
        assertThat(of("2026-08-25", young())).as("older than 56 days").isEmpty();
    }

    @Test
    void the_bedding_is_changed_the_day_after_a_birth_and_the_young_are_put_apart_before_they_feed() {
        var tasks = litter("2026-06-30", young());

        assertThat(only(CareKind.BEDDING, tasks).dueOn()).isEqualTo("2026-06-30");
        assertThat(only(CareKind.BEDDING, tasks).key()).isEqualTo("bedding:" + LITTER);
        var separation = only(CareKind.SEPARATION, tasks);
        assertThat(separation.fromOn()).isEqualTo("2026-07-06");
        assertThat(separation.dueOn()).isEqualTo("2026-07-09");
        assertThat(separation.litterId()).isEqualTo(LITTER);
        assertThat(kinds(litter("2026-07-10", young(moved("2026-07-08"))))).doesNotContain(CareKind.SEPARATION);
        assertThat(litter("2026-08-25", young())).isEmpty();
    }

    @Test
    void the_dam_is_fed_and_weighed_a_week_or_two_after_the_birth() {
        var tasks = dam("2026-07-02", Diary.of(mass("2026-06-20", "1200"), taken("2026-05-01")));

        var meal = only(CareKind.RECOVERY_MEAL, tasks);
        assertThat(meal.key()).isEqualTo("recovery-meal:" + LITTER);
        assertThat(meal.animalId()).isEqualTo(DAM);
        assertThat(meal.dueOn()).isEqualTo("2026-07-06");
        assertThat(meal.untilOn()).isEqualTo("2026-07-13");
        assertThat(only(CareKind.RECOVERY_WEIGHING, tasks).dueOn()).isEqualTo("2026-07-13");
        assertThat(dam("2026-07-14", Diary.of(mass("2026-07-10", "800"), taken("2026-07-08"))))
                .isEmpty();
    }

    @Test
    void a_quarantine_ends_as_planned_or_after_the_days_of_the_profile() {
        var planned = only(CareKind.QUARANTINE_END, of("2026-10-01", adult(quarantine("2026-09-01", "2026-12-01"))));
        var usual = only(CareKind.QUARANTINE_END, of("2026-10-01", adult(quarantine("2026-09-01", null))));

        assertThat(planned.dueOn()).isEqualTo("2026-12-01");
        // 90 days from 1 September
        assertThat(usual.dueOn()).isEqualTo("2026-11-30");
        assertThat(usual.why()).contains("90 days");
    }

    @Test
    void an_adult_is_tested_again_when_its_test_counts_no_longer() {
        var task = only(
                CareKind.TEST_BEFORE_PAIRING,
                of(
                        "2026-10-01",
                        adult(
                                test("2026-01-10", "Reptarenavirus", HealthTest.Result.NEGATIVE),
                                test("2026-04-10", "reptarenavirus ", HealthTest.Result.NEGATIVE),
                                test("2026-04-10", "Cryptosporidium", HealthTest.Result.POSITIVE))));

        // 180 days from 10 April
        assertThat(task.dueOn()).isEqualTo("2026-10-07");
        assertThat(task.key()).isEqualTo("test:%s:reptarenavirus:2026-04-10".formatted(YOUNG));
        assertThat(kinds(of("2026-10-01", young(test("2026-04-10", "Reptarenavirus", HealthTest.Result.NEGATIVE)))))
                .doesNotContain(CareKind.TEST_BEFORE_PAIRING);
    }

    @Test
    void the_latest_test_counts_with_the_negatives_before_it() {
        var diary = Diary.of(
                test("2026-01-01", "Cryptosporidium", HealthTest.Result.POSITIVE),
                test("2026-02-01", "cryptosporidium", HealthTest.Result.NEGATIVE),
                test("2026-03-01", "Cryptosporidium", HealthTest.Result.NEGATIVE));

        assertThat(CountedTest.of(diary, day("2026-08-28"))).singleElement().satisfies(test -> {
            assertThat(test.sampledOn()).isEqualTo("2026-03-01");
            assertThat(test.negativesInARow()).isEqualTo(2);
            assertThat(test.countsUntil()).isEqualTo("2026-08-28");
            assertThat(test.counts()).isTrue();
        });
        assertThat(CountedTest.of(diary, day("2026-08-29")).get(0).counts()).isFalse();
    }

    private static InCare young(org.demebook.diary.CareRecord... records) {
        return new InCare(YOUNG, BORN, LITTER, 0, Diary.of(records));
    }

    private static InCare adult(org.demebook.diary.CareRecord... records) {
        return new InCare(YOUNG, day("2020-06-01"), null, 0, Diary.of(records));
    }

    private static List<CareTask> of(String today, InCare animal) {
        return new TaskRules(TaxonProfile.BOAS, day(today)).animal(animal).tasks();
    }

    private static List<CareTask> litter(String today, InCare young) {
        return new TaskRules(TaxonProfile.BOAS, day(today))
                .litter(LITTER, BORN, List.of(young))
                .tasks();
    }

    private static List<CareTask> dam(String today, Diary diary) {
        return new TaskRules(TaxonProfile.BOAS, day(today))
                .dam(DAM, LITTER, BORN, diary)
                .tasks();
    }

    private static List<CareKind> kinds(List<CareTask> tasks) {
        return tasks.stream().map(CareTask::kind).toList();
    }

    private static CareTask only(CareKind kind, List<CareTask> tasks) {
        return tasks.stream()
                .filter(task -> task.kind() == kind)
                .reduce((one, other) -> {
                    throw new AssertionError("two tasks of " + kind);
                })
                .orElseThrow(() -> new AssertionError("no task of " + kind));
    }
}
