package org.demebook.care;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** When a task is overdue, and in which order tasks come. */
class KnownTaskTest {
    private static final UUID COLLECTION = UUID.fromString("01890a5d-ac96-774b-bcce-b302099a8057");
    private static final LocalDate DUE = LocalDate.parse("2026-06-27");

    @Test
    void a_task_is_overdue_from_the_day_after_it_was_due() {
        var meal = known(CareKind.FIRST_MEAL, DUE, null, null);
        assertThat(meal.overdueDays(DUE)).isZero();
        assertThat(meal.overdueDays(DUE.plusDays(1))).isEqualTo(1);
    }

    @Test
    void a_due_window_is_overdue_from_the_day_after_its_last_day() {
        var window = known(CareKind.DUE_WINDOW, DUE, LocalDate.parse("2026-06-22"), LocalDate.parse("2026-07-12"));
        assertThat(window.overdueDays(LocalDate.parse("2026-07-12"))).isZero();
        assertThat(window.overdueDays(LocalDate.parse("2026-07-13"))).isEqualTo(1);
        assertThat(window.firstOn()).isEqualTo(LocalDate.parse("2026-06-22"));
    }

    @Test
    void a_window_open_to_one_side_ends_on_the_day_that_is_due() {
        var from = known(CareKind.FIRST_MEAL, DUE, DUE.minusDays(3), null);
        assertThat(from.firstOn()).isEqualTo(DUE.minusDays(3));
        assertThat(from.lastOn()).isEqualTo(DUE);
    }

    @Test
    void a_moved_task_has_one_day_and_says_where_it_was() {
        var moved = known(CareKind.FIRST_MEAL, DUE, DUE.minusDays(3), DUE.plusDays(3))
                .moved(postponement(DUE.plusDays(10)));
        assertThat(moved.overdueDays(DUE.plusDays(10))).isZero();
        assertThat(moved.overdueDays(DUE.plusDays(12))).isEqualTo(2);

        var view = moved.view(DUE, Map.of());
        assertThat(view.dueOn()).isEqualTo(DUE.plusDays(10));
        assertThat(view.movedFrom()).isEqualTo(DUE);
        assertThat(view.fromOn()).isNull();
        assertThat(view.untilOn()).isNull();
    }

    @Test
    void a_task_that_was_done_is_never_overdue() {
        var done = known(CareKind.BEDDING, DUE, null, null).done(new Completion());
        assertThat(done.overdueDays(DUE.plusYears(1))).isZero();
        assertThat(done.state()).isEqualTo(TaskState.DONE);
    }

    @Test
    void overdue_ones_come_before_those_of_today_and_these_before_later_ones() {
        var overdueWindow = known(CareKind.DUE_WINDOW, DUE, DUE.minusDays(5), DUE.plusDays(1));
        var overdue = known(CareKind.NEXT_MEAL, DUE.plusDays(1), null, null);
        var openWindow = known(CareKind.DUE_WINDOW, DUE.minusDays(9), DUE.minusDays(9), DUE.plusDays(9));
        var todays = known(CareKind.NEXT_MEAL, DUE.plusDays(2), null, null);
        var today = DUE.plusDays(2);
        assertThat(Stream.of(todays, openWindow, overdue, overdueWindow)
                        .sorted((a, b) -> a.place(today).compareTo(b.place(today))))
                .containsExactly(overdueWindow, overdue, openWindow, todays);
    }

    @Test
    void a_silence_covers_its_task_its_kind_for_the_animal_or_its_kind_in_the_collection() {
        var animal = UUID.randomUUID();
        var task = task("next-meal:1", CareKind.NEXT_MEAL, animal);
        var otherDay = task("next-meal:2", CareKind.NEXT_MEAL, animal);
        var otherAnimal = task("next-meal:3", CareKind.NEXT_MEAL, UUID.randomUUID());
        var otherKind = task("bedding:1", CareKind.BEDDING, animal);
        var all = List.of(task, otherDay, otherAnimal, otherKind);

        assertThat(all).filteredOn(covered(SilenceScope.TASK, animal)).containsExactly(task);
        assertThat(all).filteredOn(covered(SilenceScope.KIND_OF_ANIMAL, animal)).containsExactly(task, otherDay);
        assertThat(all).filteredOn(covered(SilenceScope.KIND, animal)).containsExactly(task, otherDay, otherAnimal);
        assertThat(silence(SilenceScope.KIND, animal).covers(task, UUID.randomUUID()))
                .as("in another collection")
                .isFalse();
    }

    @Test
    void a_key_can_stand_in_an_address() {
        // unreserved characters and the colon may stand in a path segment as they are (RFC 3986, 3.3)
        assertThat(task("first-meal:01890a5d-ac96-774b-bcce-b302099a8057", CareKind.FIRST_MEAL, null))
                .isNotNull();
        for (var key : List.of("", "first meal", "a/b", "a?b", "ä", "x".repeat(201))) {
            assertThatIllegalArgumentException().isThrownBy(() -> task(key, CareKind.FIRST_MEAL, null));
        }
    }

    @Test
    void every_kind_reads_back_from_its_word() {
        assertThat(CareKind.values())
                .allSatisfy(kind -> assertThat(CareKind.parse(kind.word())).isEqualTo(kind));
    }

    private static KnownTask known(CareKind kind, LocalDate dueOn, LocalDate fromOn, LocalDate untilOn) {
        var task = new CareTask(kind.word() + ":1", kind, null, null, dueOn, fromOn, untilOn, "what", "why");
        return new KnownTask(task, COLLECTION, null, null, null, List.of());
    }

    private static CareTask task(String key, CareKind kind, UUID animalId) {
        return new CareTask(key, kind, animalId, null, DUE, null, null, "what", "why");
    }

    private static Postponement postponement(LocalDate to) {
        var postponement = new Postponement();
        postponement.movedTo = to;
        postponement.timesMoved = 1;
        return postponement;
    }

    private static Predicate<CareTask> covered(SilenceScope scope, UUID animalId) {
        return task -> silence(scope, animalId).covers(task, COLLECTION);
    }

    /** Of next meals. */
    private static Silence silence(SilenceScope scope, UUID animalId) {
        var silence = new Silence();
        silence.collectionId = COLLECTION;
        silence.scope = scope;
        silence.kind = CareKind.NEXT_MEAL;
        silence.animalId = animalId;
        silence.key = "next-meal:1";
        return silence;
    }
}
