package org.demebook.protocol.simulation;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Predicate;
import org.demebook.protocol.Entry;
import org.demebook.protocol.FeedPage;
import org.demebook.protocol.Statement;

/** The invariants I1 to I13 of the protocol: when each of them is looked at. */
final class Rules {
    /** What of a node was there when it was looked at last. */
    private record Look(int starts, long version, boolean fenced) {}

    private final World world;
    private final CustodyRules custody;
    private final JournalRules journals;
    private final TellingRules tellings;
    private final Map<SimNode, Look> looks = new HashMap<>();

    Rules(World world) {
        this.world = world;
        custody = new CustodyRules(world);
        journals = new JournalRules(world);
        tellings = new TellingRules(world);
    }

    void afterStep() {
        boolean something = false;
        for (var written = world.written.poll(); written != null; written = world.written.poll()) {
            see(written);
            something = true;
        }
        if (something) {
            custody.i2_every_animal_is_held_once_or_on_its_way();
        }
        for (var node : world.nodes) {
            if (node.isGone()) {
                continue;
            }
            var look = new Look(node.starts(), node.disk.version(), !node.writes());
            if (!look.equals(looks.put(node, look))) {
                look(node);
            }
        }
        custody.i1_at_most_one_says_that_it_holds_an_animal();
    }

    private void see(SimDisk.Written written) {
        var where = world.nodeOf(written.disk());
        written.entry().ifPresent(kept -> {
            boolean news = world.chronicle.see(where, written.journal(), kept);
            tellings.i7_a_body_reaches_only_its_readers(where, written.journal(), kept);
            journals.i3_what_is_lost_stays_lost(where, written.journal(), kept);
            if (news && where.id.equals(written.journal())) {
                journals.i6_nothing_is_said_twice(where, kept);
            }
        });
        written.head().ifPresent(head -> journals.i4_a_head_is_kept_for_good(where, written.journal(), head));
    }

    private void look(SimNode node) {
        if (node.writes() && node.isRestored()) {
            node.madeWhole();
            journals.i3_a_restore_took_back_only_what_nobody_had(node);
            journals.i4_every_head_is_still_true();
        }
        if (!node.isRestored()) {
            journals.i3_what_was_acknowledged_is_there(node);
        }
        if (node.runs()) {
            custody.look(node);
            tellings.i8_what_was_purged_is_not_there(node);
            tellings.i10_nobody_is_its_own_ancestor(node);
        }
        tellings.i11_nobody_honest_is_accused(node);
    }

    /** A disk was restored, or is gone. */
    void somethingWasLost() {
        world.chronicle.readAgain(world.nodes);
        journals.readAgain();
    }

    /** Something leaves a node. */
    void given(SimNode asker, FeedPage page) {
        tellings.i7_a_body_is_given_only_to_its_readers(asker, page);
    }

    /** A call returned: what it wrote is there for good. @param before how many entries there were before the call */
    void acknowledged(SimNode node, int before) {
        journals.acknowledged(node, before);
    }

    void requireWritten(SimNode node, Entry entry) {
        journals.i3_what_was_returned_is_there(node, entry);
    }

    void requireSaid(SimNode node, Predicate<Statement> wanted) {
        journals.i3_what_was_asked_for_is_said(node, wanted);
    }

    /** Something that has no effect where it is done again at once. */
    void once(SimNode node, String what, Runnable act) {
        int before = node.disk.journal(node.id).size();
        act.run();
        acknowledged(node, before);
        int after = node.disk.journal(node.id).size();
        if (after > before) {
            world.story.tell("%s %s: %d entries".formatted(node, what, after - before));
            act.run();
            world.story.count(Happening.REPEATED);
            if (node.disk.journal(node.id).size() != after) {
                throw world.story.broken("I6", "%s %s twice".formatted(node, what));
            }
        }
    }

    void atTheEnd() {
        journals.i3_what_was_acknowledged_is_there();
        journals.i4_every_head_is_still_true();
        journals.i5_copies_and_state_follow_from_the_journals();
        tellings.i8_what_was_withdrawn_is_nowhere();
        tellings.i9_equal_heads_and_permission_give_equal_figures();
        tellings.i9_readers_have_what_is_told_to_them();
        custody.i12_every_transfer_has_ended();
    }

    /** Who holds what, where everything is known to everybody. */
    String custodyOfAll() {
        return Custody.of(world).holders().toString();
    }
}
