package org.demebook.protocol.simulation;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.demebook.protocol.Cursor;
import org.demebook.protocol.FeedError;
import org.demebook.protocol.FeedPage;
import org.demebook.protocol.Intake;
import org.demebook.protocol.PageForm;

/**
 * Questions for entries and their answers, in the bytes of the real encoding: lost, doubled, late, out of order, and held back where a
 * link is cut. As on a connection, an answer belongs to one question and is not delivered after its asker has started anew.
 */
class SimNetwork {
    private record Question(SimNode asker, int start, SimNode giver, Cursor cursor, int most) {}

    private record Answer(byte[] page, FeedError.Reason refusal) {}

    private record Link(SimNode one, SimNode other) {
        static Link between(SimNode a, SimNode b) {
            return a.number < b.number ? new Link(a, b) : new Link(b, a);
        }
    }

    private final World world;
    private final Dice dice;
    private final Conditions conditions;
    private final Map<Link, Long> cutUntil = new HashMap<>();
    private final Map<Link, Long> lastArrival = new HashMap<>();
    private boolean calm;

    SimNetwork(World world, Dice dice, Conditions conditions) {
        this.world = world;
        this.dice = dice;
        this.conditions = conditions;
    }

    void cut(SimNode one, SimNode other, Duration howLong) {
        cutUntil.put(Link.between(one, other), world.millis() + howLong.toMillis());
    }

    /** From here on everything arrives, at once and in order. */
    void calm() {
        calm = true;
        cutUntil.clear();
    }

    /** From here on it is as bad as the world's conditions have it. */
    void rage() {
        calm = false;
    }

    void ask(SimNode asker, SimNode giver, String journal) {
        int most = dice.happens(0.2) ? 1 + dice.below(3) : 100;
        var question = new Question(asker, asker.starts(), giver, cursor(asker, giver, journal), most);
        send(asker, giver, () -> answer(question));
        if (!calm && dice.happens(conditions.duplication())) {
            world.story.count(Happening.DUPLICATED);
            send(asker, giver, () -> answer(question));
        }
    }

    /** At the end of what is held here, or, of the giver's own journal, where others gave digests. */
    private Cursor cursor(SimNode asker, SimNode giver, String journal) {
        var again = giver.id.equals(journal) ? asker.participant().cursorAgain(journal) : Optional.<Cursor>empty();
        return again.isPresent() && dice.happens(0.5)
                ? again.get()
                : asker.participant().cursor(journal);
    }

    private void send(SimNode from, SimNode to, Runnable arrival) {
        if (calm) {
            arrival.run();
            return;
        }
        if (dice.happens(conditions.loss())) {
            world.story.count(Happening.LOST);
            return;
        }
        long arrivesAt = world.millis() + dice.between(1, delayMillis());
        long before = lastArrival.getOrDefault(Link.between(from, to), 0L);
        if (arrivesAt < before) {
            world.story.count(Happening.OVERTAKEN);
        }
        lastArrival.put(Link.between(from, to), Math.max(before, arrivesAt));
        world.at(arrivesAt, () -> {
            if (world.millis() < cutUntil.getOrDefault(Link.between(from, to), 0L)) {
                world.story.count(Happening.HELD_BACK_BY_A_CUT);
            } else {
                arrival.run();
            }
        });
    }

    private long delayMillis() {
        if (dice.happens(0.7)) {
            return 2_000;
        }
        world.story.count(Happening.DELAYED);
        return conditions.slowestMinutes() * 60_000L;
    }

    private void answer(Question question) {
        var giver = question.giver();
        if (!giver.runs()) {
            return;
        }
        var answer = given(question);
        send(giver, question.asker(), () -> deliver(question, answer));
        if (!calm && dice.happens(conditions.duplication())) {
            world.story.count(Happening.ANSWERED_TWICE);
            send(giver, question.asker(), () -> deliver(question, answer));
        }
    }

    private Answer given(Question question) {
        var cursor = question.cursor();
        try {
            var page = question.giver().give(question.asker().id, cursor.node(), cursor.after(), question.most());
            world.rules.given(question.asker(), page);
            return new Answer(PageForm.write(page), null);
        } catch (FeedError refusal) {
            world.story.tell("%s gives %s nothing of %s: %s"
                    .formatted(question.giver(), question.asker(), world.story.node(cursor.node()), refusal.reason()));
            return new Answer(new byte[0], refusal.reason());
        }
    }

    /** Whether an answer still reaches who asked. */
    boolean reaches(SimNode asker, int start) {
        return asker.starts() == start;
    }

    private void deliver(Question question, Answer answer) {
        var asker = question.asker();
        if (!asker.runs() || !reaches(asker, question.start())) {
            world.story.count(Happening.MEANT_FOR_AN_EARLIER_START);
        } else if (answer.refusal() == null) {
            takeIn(question, page(question, answer));
        } else {
            if (answer.refusal() == FeedError.Reason.CURSOR_FROM_THE_FUTURE) {
                world.story.count(Happening.FROM_THE_FUTURE);
            }
            asker.participant().refused(question.giver().id, question.cursor(), answer.refusal());
        }
    }

    private FeedPage page(Question question, Answer answer) {
        try {
            return PageForm.read(answer.page(), Keys.VERIFIED);
        } catch (RuntimeException unreadable) {
            throw world.story.broken(
                    "I11",
                    "%s cannot read what honest %s sent: %s".formatted(question.asker(), question.giver(), unreadable));
        }
    }

    private void takeIn(Question question, FeedPage page) {
        var asker = question.asker();
        var cursor = question.cursor();
        var intake = asker.participant().take(question.giver().id, cursor, page);
        if (intake.outcome() != Intake.Outcome.NOTHING_NEW) {
            world.story.tell("%s takes %d of %s from %s after %d: %s"
                    .formatted(
                            asker,
                            intake.taken(),
                            world.story.node(cursor.node()),
                            question.giver(),
                            cursor.after(),
                            intake.outcome()));
        }
        if (cursor.again() && intake.taken() > 0) {
            world.story.count(Happening.FILLED);
        }
        if (intake.outcome() == Intake.Outcome.STALE) {
            world.story.count(Happening.STALE);
        }
        if (intake.outcome() == Intake.Outcome.TAKEN && !calm && dice.happens(0.6)) {
            world.settleSoon(asker);
        }
        if (intake.more() && intake.outcome() == Intake.Outcome.TAKEN) {
            ask(asker, question.giver(), cursor.node());
        }
    }
}
