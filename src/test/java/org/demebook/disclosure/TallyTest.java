package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.demebook.disclosure.Plan.Line;
import org.demebook.disclosure.Rules.Need;
import org.demebook.disclosure.Rules.Reason;
import org.demebook.disclosure.Tally.Counted;
import org.junit.jupiter.api.Test;

/** Who stands behind a figure where holder and owner differ; counted by hand. */
class TallyTest {
    private static final Figure F = new Figure("f", "f"::equals);
    private static final Figure M = new Figure("m", "m"::equals);
    private static final Figure ALL = new Figure("all", cell -> true);
    private static final Plan PLAN =
            new Plan(List.of(List.of("f", "m")), List.of(F, M, ALL), List.of(new Line("all", List.of("f", "m"))));
    private static final Rules RULES = new Rules(3, 0);

    private static Tally of(Set<String> waivers, Counted... units) {
        return new Tally(PLAN, List.of(units), waivers);
    }

    private static Counted unit(int name, String cell, String holder, String owner) {
        return new Counted("u" + name, cell, holder, owner);
    }

    private final Tally lent = of(
            Set.of(), unit(1, "f", "A", "Z"), unit(2, "f", "B", "Z"), unit(3, "f", "C", "Z"), unit(4, "m", "A", "A"));

    @Test
    void the_fewer_of_holders_and_owners_stand_behind_a_figure() {
        assertThat(lent.value(F)).isEqualTo(3);
        assertThat(lent.value(ALL)).isEqualTo(4);
        assertThat(lent.respondents(F)).isEqualTo(1);
        assertThat(lent.respondents(ALL)).isEqualTo(2);
        assertThat(lent.everybody()).containsExactly("A", "B", "C", "Z");
        assertThat(lent.shares(F, Counted::holder)).isEqualTo(Map.of("A", 1, "B", 1, "C", 1));
        assertThat(lent.shares(F, Counted::owner)).isEqualTo(Map.of("Z", 3));
    }

    @Test
    void the_stricter_of_both_views_is_what_a_figure_needs() {
        // by holder not sensitive; by owner one keeper alone, at p = 50 to be kept open by 50 % of 3, rounded up
        assertThat(Sensitivity.figures(lent, new Rules(3, 50)).get(F))
                .isEqualTo(new Need(Reason.FEW_RESPONDENTS, 2, 2));
        // by owner E 4, Z 2: 50 % of 4; by holder A 2, B 2, C 2, where 2 of 6 are left beside the two largest: no need
        var units = new Counted[6];
        for (int i = 0; i < 6; i++) {
            units[i] = unit(i, "f", List.of("A", "B", "C").get(i % 3), i < 4 ? "E" : "Z");
        }
        assertThat(Sensitivity.figures(of(Set.of(), units), new Rules(3, 50)).get(F))
                .isEqualTo(new Need(Reason.FEW_RESPONDENTS, 2, 2));
        // sensitive both ways: by holder A 6 alone (3), by owner E 4 and Z 2 (2)
        var one = new Counted[6];
        for (int i = 0; i < 6; i++) {
            one[i] = unit(i, "f", "A", i < 4 ? "E" : "Z");
        }
        assertThat(Sensitivity.figures(of(Set.of(), one), new Rules(3, 50)).get(F))
                .isEqualTo(new Need(Reason.FEW_RESPONDENTS, 3, 3));
    }

    @Test
    void holder_and_owner_both_know_a_unit_once() {
        assertThat(lent.knownTo("A")).containsExactly(1, 1);
        assertThat(lent.knownTo("Z")).containsExactly(3, 0);
        assertThat(lent.knownTo("nobody")).containsExactly(0, 0);
    }

    @Test
    void a_change_is_what_came_in_less_what_went_out() {
        var later = of(
                Set.of(),
                unit(2, "f", "A", "Y"), // has changed hands, and is in the figure both times
                unit(3, "m", "C", "Z"), // has moved to another class
                unit(4, "m", "A", "A"),
                unit(5, "f", "D", "D"));
        assertThat(later.changes(lent, F, Counted::holder)).isEqualTo(Map.of("A", -1, "C", -1, "D", 1));
        assertThat(later.changes(lent, M, Counted::holder)).isEqualTo(Map.of("C", 1));
        assertThat(later.changes(lent, ALL, Counted::holder)).isEqualTo(Map.of("A", -1, "D", 1));
        assertThat(later.changes(later, F, Counted::owner)).isEmpty();
        // one went and one came: on balance nothing
        var replaced = of(Set.of(), unit(9, "f", "A", "Z"), unit(2, "f", "B", "Z"), unit(3, "f", "C", "Z"));
        assertThat(replaced.changes(lent, F, Counted::holder)).isEmpty();
    }

    @Test
    void the_change_of_few_is_sensitive_by_holder_or_by_owner() {
        var nothing = of(Set.of());
        assertThat(Sensitivity.change(nothing, lent, F, RULES)).isPresent();
        assertThat(Sensitivity.change(lent, lent, F, RULES)).isEmpty();
        var waived = of(Set.of("Z"), unit(1, "f", "A", "Z"), unit(2, "f", "B", "Z"), unit(3, "f", "C", "Z"));
        assertThat(Sensitivity.change(nothing, waived, F, RULES)).isEmpty();
    }

    @Test
    void all_in_one_class_is_sensitive_unless_everybody_behind_it_has_waived() {
        var line = PLAN.lines().get(0);
        var females = new Counted[] {unit(1, "f", "A", "A"), unit(2, "f", "B", "B")};
        assertThat(Sensitivity.inOneClass(of(Set.of(), females))).containsExactly(line);
        assertThat(Sensitivity.inOneClass(of(Set.of("A"), females))).containsExactly(line);
        assertThat(Sensitivity.inOneClass(of(Set.of("A", "B"), females))).isEmpty();
        assertThat(Sensitivity.inOneClass(of(Set.of("A", "B"), unit(1, "f", "A", "Z"))))
                .containsExactly(line);
        assertThat(Sensitivity.inOneClass(of(Set.of()))).isEmpty();
        assertThat(Sensitivity.inOneClass(lent)).isEmpty();
        assertThat(Sensitivity.empty(of(Set.of(), females), line)).containsExactly(M);

        var alone = new Plan(List.of(List.of("f")), List.of(F, ALL), List.of(new Line("all", List.of("f"))));
        assertThat(Sensitivity.inOneClass(new Tally(alone, List.of(females), Set.of())))
                .isEmpty();
    }

    @Test
    void empty_figures_are_told_where_they_hide_no_class() {
        assertThat(Sensitivity.alwaysTold(of(Set.of())).stream()).containsExactly(0, 1, 2);
        assertThat(Sensitivity.alwaysTold(of(Set.of(), unit(1, "f", "A", "A"))).stream())
                .isEmpty();
        assertThat(Sensitivity.alwaysTold(of(Set.of("A"), unit(1, "f", "A", "A"))).stream())
                .containsExactly(1);
    }

    @Test
    void what_a_plan_does_not_have_is_refused() {
        assertThatThrownBy(() -> of(Set.of(), unit(1, "x", "A", "A")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("x");
        assertThatThrownBy(() -> PLAN.figure("x"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("x");
        assertThatThrownBy(() -> new Plan(List.of(List.of("f")), List.of(F, F), List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("f");
        assertThat(PLAN.covered(ALL)).containsExactly(0, 1);
        assertThat(PLAN.covered(M)).containsExactly(1);
        assertThat(lent.plan()).isSameAs(PLAN);
        assertThat(of(Set.of("A")).waivers()).containsExactly("A");
    }
}
