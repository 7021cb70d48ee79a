package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.disclosure.Regions.tally;
import static org.demebook.disclosure.Regions.withholding;

import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.demebook.disclosure.Knowledge.Sum;
import org.demebook.disclosure.Rules.Reason;
import org.junit.jupiter.api.Test;

/**
 * What readers and observers know of one row of two cells at two dates, worked out by hand. Before: x is A4 B3 C2, y is D8
 * (one keeper: sensitive). After: A has two more in x, and E, F and G have come into y.
 */
class KnowledgeTest {
    private static final Rules RULES = new Rules(3, 15);
    // in the order of the plan: r·x, r·y, r·total, total·x, total·y, total
    private static final int FIGURES = 6;

    private final Tally before = tally(row("A4 B3 C2", "D8"));
    private final Tally after = tally(row("A6 B3 C2", "D8 E4 F3 G3"));
    private final Release told = withholding(before, "r·y", "total·y", "r·x", "total·x");

    private static Map<String, String> row(String x, String y) {
        var cells = new LinkedHashMap<String, String>();
        cells.put("r·x", x);
        cells.put("r·y", y);
        return cells;
    }

    private static BitSet none() {
        return new BitSet();
    }

    @Test
    void a_reader_knows_what_was_told_and_learns_what_will_be() {
        var knowledge = Knowledge.ofReaders(List.of(told), after, RULES);

        assertThat(knowledge.variables()).isEqualTo(4);
        assertThat(knowledge.sums()).hasSize(2 + FIGURES);
        var total = knowledge.sums().get(0);
        assertThat(total.plus()).containsExactly(0, 1);
        assertThat(total.minus()).isEmpty();
        assertThat(total.value()).isEqualTo(17);
        assertThat(total.figure()).isEqualTo(-1);
        var x = knowledge.sums().get(2);
        assertThat(x.plus()).containsExactly(2);
        assertThat(x.value()).isEqualTo(11);
        assertThat(x.figure()).isZero();
        assertThat(knowledge.sums().get(1 + FIGURES).plus()).containsExactly(2, 3);
        assertThat(knowledge.sums().get(1 + FIGURES).figure()).isEqualTo(FIGURES - 1);
    }

    @Test
    void an_observer_also_knows_the_changes_of_many() {
        var reader = Knowledge.ofReaders(List.of(told), after, RULES);
        var observer = Knowledge.ofObservers(List.of(told), after, RULES);

        // E, F and G came into y: 10 more of three keepers, 10 − 4 − 3 = 3 ≥ 0.6. With A's two, four came into the row.
        var changes =
                observer.sums().subList(reader.sums().size(), observer.sums().size());
        assertThat(changes).extracting(Sum::value).containsExactly(10, 12, 10, 12);
        assertThat(changes).allSatisfy(change -> assertThat(change.figure()).isEqualTo(-1));
        assertThat(changes.get(0).plus()).containsExactly(3);
        assertThat(changes.get(0).minus()).containsExactly(1);
        assertThat(changes.get(1).plus()).containsExactly(2, 3);
        assertThat(changes.get(1).minus()).containsExactly(0, 1);
    }

    @Test
    void a_change_of_one_keeper_is_asked_for_and_not_taken_as_known() {
        var questions = Knowledge.ofReaders(List.of(told), after, RULES).questions();

        assertThat(questions)
                .extracting(Question::subject)
                .containsExactly("change of r·x since release 1", "change of total·x since release 1");
        var change = questions.get(0);
        assertThat(change.figure()).isEqualTo("r·x");
        assertThat(change.plus()).containsExactly(2);
        assertThat(change.minus()).containsExactly(0);
        assertThat(change.value()).isEqualTo(2);
        assertThat(change.need().reason()).isEqualTo(Reason.FEW_RESPONDENTS);
        assertThat(change.in(new long[] {9, 8, 12, 18})).isEqualTo(3);
    }

    @Test
    void an_observer_is_asked_for_what_was_sensitive_before() {
        assertThat(Knowledge.ofObservers(List.of(told), after, RULES).questions())
                .extracting(Question::subject)
                .containsExactly(
                        "r·y of release 1",
                        "total·y of release 1",
                        "change of r·x since release 1",
                        "change of total·x since release 1")
                .doesNotContain("r·y");
    }

    @Test
    void an_observer_is_asked_for_what_is_sensitive_now() {
        assertThat(Knowledge.ofObservers(List.of(told), before, RULES).questions())
                .extracting(Question::subject)
                .containsExactly("r·y of release 1", "total·y of release 1", "r·y", "total·y");
    }

    @Test
    void the_public_comes_first_and_who_knows_the_same_is_asked_once() {
        var views = Knowledge.ofReaders(List.of(told), after, RULES).views();

        assertThat(views)
                .extracting(Knowledge.View::who)
                .containsExactly(Knowledge.PUBLIC, "A", "B", "C", "D", "E", "F");
        assertThat(views.get(0).known()).containsExactly(0, 0, 0, 0);
        assertThat(views.get(1).known()).containsExactly(4, 0, 6, 0);
        assertThat(views.get(4).known()).containsExactly(0, 8, 0, 8);
        assertThat(views.get(5).known()).containsExactly(0, 0, 0, 4);
    }

    @Test
    void a_world_is_possible_that_agrees_with_all_that_is_told_and_with_what_the_reader_has() {
        var knowledge = Knowledge.ofReaders(List.of(told), after, RULES);
        var everybody = knowledge.views().get(0);
        var a = knowledge.views().get(1);
        long[] truth = {9, 8, 11, 18};
        long[] other = {5, 12, 11, 18};

        assertThat(knowledge.allows(truth, everybody, none())).isTrue();
        assertThat(knowledge.allows(other, everybody, none())).isTrue();
        assertThat(knowledge.allows(other, a, none())).isTrue();
        assertThat(knowledge.allows(new long[] {3, 14, 11, 18}, a, none())).isFalse();
        assertThat(knowledge.allows(new long[] {4, 13, 6, 18}, a, none())).isTrue();
        // the total of the first release was told: 17
        assertThat(knowledge.allows(new long[] {9, 9, 11, 18}, everybody, none()))
                .isFalse();

        long[] moved = {9, 8, 10, 19};
        assertThat(knowledge.allows(moved, everybody, none())).isTrue();
        var x = none();
        x.set(0);
        assertThat(knowledge.allows(moved, everybody, x)).isFalse();
        // r·x, r·y and the two totals below them have changed, the total of all has not
        assertThat(knowledge.differing(moved).stream()).containsExactly(0, 1, 3, 4);
        assertThat(knowledge.differing(truth).stream()).isEmpty();
    }

    @Test
    void a_change_that_is_known_binds_both_releases() {
        var observer = Knowledge.ofObservers(List.of(told), after, RULES);
        var everybody = observer.views().get(0);

        assertThat(observer.allows(new long[] {9, 8, 11, 18}, everybody, none()))
                .isTrue();
        assertThat(observer.allows(new long[] {8, 9, 10, 19}, everybody, none()))
                .isTrue();
        assertThat(observer.allows(new long[] {8, 9, 11, 18}, everybody, none()))
                .isFalse();
    }

    @Test
    void empty_classes_beside_one_that_has_everything_are_asked_for() {
        var knowledge = Knowledge.ofReaders(List.of(), tally(row("A4 B3 C2", "")), RULES);

        assertThat(knowledge.questions()).extracting(Question::subject).containsExactly("empty classes of r·total");
        var question = knowledge.questions().get(0);
        assertThat(question.plus()).containsExactly(1);
        assertThat(question.value()).isZero();
        assertThat(question.need()).isEqualTo(new Rules.Need(Reason.ALL_IN_ONE_CLASS, 0, 1));
        // r·y may be withheld, for it hides a class; that nothing is in its column is told
        assertThat(knowledge.alwaysTold().stream()).containsExactly(4);
    }

    @Test
    void there_is_room_above_every_count() {
        assertThat(Knowledge.ofReaders(List.of(told), after, RULES).ceiling()).isEqualTo(4 * 29 + 100);
        assertThat(Knowledge.ofReaders(List.of(), after, RULES)
                        .question(after.plan().figure("r·y")))
                .satisfies(question -> assertThat(question.value()).isEqualTo(18))
                .satisfies(question -> assertThat(question.plus()).containsExactly(1))
                .satisfies(question -> assertThat(question.figure()).isEqualTo("r·y"));
    }
}
