package org.demebook.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.demebook.protocol.Statement.HoldingTold;
import org.junit.jupiter.api.Test;

/** What another gave as a digest comes from the journal's own node, and from nobody else. */
class AskedAgainTest {
    private final Attacked world = new Attacked();
    private final Liar liar = world.liar;
    private final Attacked.Honest harbour = world.harbour;
    private final Attacked.Honest upland = world.upland;

    private static HoldingTold female(AnimalId animal) {
        return new HoldingTold(animal, "female", true, "keeper-7", Attacked.nothing());
    }

    /** Harbour tells upland of its animal, and upland hears of it at the third. */
    private void hearElsewhere() {
        harbour.participant.write(List.of(Saying.to(Set.of(upland.id()), female(world.hers))));
        long after = upland.participant.cursor(harbour.id()).after();
        world.gives(upland, liar.id(), harbour.participant.entries(liar.id(), harbour.id(), after, 100));
        assertThat(upland.participant.heads().get(harbour.id())).isEqualTo(after + 1);
        assertThat(upland.participant.told().holdings()).doesNotContainKey(world.hers);
    }

    private Cursor again() {
        return upland.participant.cursorAgain(harbour.id()).orElseThrow();
    }

    private FeedPage given(Cursor cursor) {
        return PageForm.read(
                PageForm.write(harbour.participant.entries(upland.id(), harbour.id(), cursor.after(), 100)));
    }

    @Test
    void what_is_told_to_a_node_reaches_it_though_it_heard_of_it_at_another_first() {
        hearElsewhere();
        var cursor = again();
        var intake = upland.participant.take(harbour.id(), cursor, given(cursor));
        assertThat(intake).isEqualTo(new Intake(Intake.Outcome.TAKEN, 1, false));
        assertThat(upland.participant.told().holdings()).containsEntry(world.hers, female(world.hers));
        assertThat(upland.participant.cursorAgain(harbour.id())).isEmpty();
        assertThat(upland.participant.take(harbour.id(), cursor, given(cursor)).outcome())
                .as("the same answer a second time")
                .isEqualTo(Intake.Outcome.STALE);
        assertThat(upland.participant.alarms()).isEmpty();
    }

    @Test
    void nobody_else_is_believed() {
        hearElsewhere();
        var cursor = again();
        assertThat(upland.participant.take(liar.id(), cursor, given(cursor)).outcome())
                .isEqualTo(Intake.Outcome.STALE);
        assertThat(again()).isEqualTo(cursor);
    }

    @Test
    void what_was_withdrawn_meanwhile_does_not_come_back() {
        hearElsewhere();
        var cursor = again();
        var underWay = given(cursor);
        harbour.participant.write(List.of(Saying.toAll(new Statement.TellingsWithdrawn(List.of(cursor.after() + 1)))));
        Attacked.sync(upland, harbour, harbour.id());
        upland.participant.take(harbour.id(), cursor, underWay);
        assertThat(upland.participant.told().holdings()).doesNotContainKey(world.hers);
        assertThat(upland.participant.alarms()).isEmpty();
    }

    @Test
    void its_own_node_gives_what_stands_in_its_journal_or_is_named() {
        liar.says(female(world.his));
        world.givesAll(harbour);
        Attacked.sync(upland, harbour, liar.id());
        var cursor = upland.participant.cursorAgain(liar.id()).orElseThrow();
        var other = liar.forkedAfter((int) cursor.after())
                .says(new HoldingTold(world.his, "male", true, "keeper-7", Attacked.nothing()))
                .page(cursor.after());
        upland.participant.take(liar.id(), cursor, PageForm.read(PageForm.write(other)));
        world.assertDetected(upland, Alarm.Kind.FALSE_PROOF);
        assertThat(upland.participant.told().holdings()).doesNotContainKey(world.his);
        assertThat(upland.participant.cursorAgain(liar.id())).isEqualTo(Optional.empty());
    }
}
