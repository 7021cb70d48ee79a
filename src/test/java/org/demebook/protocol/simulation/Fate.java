package org.demebook.protocol.simulation;

import java.time.Duration;

/** What breaks: power, disks, links, clocks. */
final class Fate {
    private final World world;
    private final Dice dice;
    private final Dice jumps;
    private boolean someoneIsGone;

    Fate(World world, Dice dice) {
        this.world = world;
        this.dice = dice;
        jumps = dice.further();
    }

    void strike() {
        var node = dice.oneOf(world.nodes);
        var conditions = world.conditions;
        if (dice.happens(0.4) && !node.isGone()) {
            node.backUp();
        }
        if (dice.happens(conditions.powerCuts()) && node.runs()) {
            cutThePower(node);
        }
        if (dice.happens(conditions.restores())) {
            restore(node);
        }
        if (dice.happens(conditions.cutLinks())) {
            cutLinks(node);
        }
        if (conditions.goneForGood() && !someoneIsGone && world.story.steps() > 50 && dice.happens(0.3)) {
            goForGood(node);
        }
        var withClock = jumps.oneOf(world.nodes);
        if (jumps.happens(conditions.jumps())) {
            var by = Duration.ofHours(jumps.between(-100L, 100L));
            withClock.clock.jump(by);
            world.story.count(Happening.CLOCK_JUMPED);
            world.story.tell("the clock of %s jumps by %s".formatted(withClock, by));
        }
    }

    private void cutThePower(SimNode node) {
        switch (dice.below(6)) {
            case 0 -> {
                world.story.count(Happening.CUT_BETWEEN_CHANGES);
                fall(node, "falls between two changes");
            }
            case 1 -> node.disk.cutAt(SimDisk.Moment.BEFORE_THE_COMMIT, 0);
            case 2, 3 -> node.disk.cutAt(SimDisk.Moment.AFTER_THE_COMMIT, 0);
            default -> node.disk.cutAt(SimDisk.Moment.BEFORE_A_WRITE, dice.below(12));
        }
    }

    /** The power failed there within a change. */
    void fell(PowerCut cut) {
        var how =
                switch (cut.moment()) {
                    case BEFORE_A_WRITE -> Happening.CUT_BEFORE_A_WRITE;
                    case BEFORE_THE_COMMIT -> Happening.CUT_BEFORE_THE_COMMIT;
                    case AFTER_THE_COMMIT -> Happening.CUT_AFTER_THE_COMMIT;
                };
        world.story.count(how);
        fall(world.nodeOf(cut.disk()), "falls: " + how);
    }

    private void fall(SimNode node, String how) {
        node.fall();
        world.story.tell(node + " " + how);
        startLater(node);
    }

    private void startLater(SimNode node) {
        world.at(world.millis() + dice.between(1, 90 * 60_000L), () -> {
            if (!node.runs() && !node.isGone()) {
                node.start();
                world.story.tell(node + " starts");
            }
        });
    }

    /** One at a time: two that lost something could each be waited for by the other, and what both had would be lost. */
    private void restore(SimNode node) {
        boolean anotherIs = world.nodes.stream().anyMatch(SimNode::isRestored);
        if (anotherIs || node.isGone() || node.backups.isEmpty() || isKnownToTheGoneAlone(node)) {
            return;
        }
        int before = node.disk.journal(node.id).size();
        int chosen = dice.below(node.backups.size());
        node.restore(node.backups.get(chosen));
        // later ones may hold what is lost from here on, and must not be put back
        node.backups.subList(chosen + 1, node.backups.size()).clear();
        world.story.count(Happening.RESTORED);
        world.story.tell("%s is restored from a backup: %d of %d entries"
                .formatted(node, node.disk.journal(node.id).size(), before));
        world.rules.somethingWasLost();
        startLater(node);
    }

    /** What only a node that is gone for good has of a journal comes back from nobody: two misfortunes at once, which no protocol heals. */
    private boolean isKnownToTheGoneAlone(SimNode node) {
        int living = 0;
        int gone = 0;
        for (var other : world.nodes) {
            int held = other.disk.journal(node.id).size();
            if (other.isGone()) {
                gone = Math.max(gone, held);
            } else if (other != node) {
                living = Math.max(living, held);
            }
        }
        return gone > living;
    }

    private void cutLinks(SimNode node) {
        var howLong = Duration.ofMinutes(dice.between(10L, 600L));
        if (dice.happens(0.5)) {
            var other = dice.oneOf(world.nodes);
            world.network.cut(node, other, howLong);
            world.story.count(Happening.LINK_CUT);
            world.story.tell("%s and %s do not reach each other for %s".formatted(node, other, howLong));
            return;
        }
        var side = dice.someOf(world.nodes.stream().map(each -> each.id).toList());
        for (var one : world.nodes) {
            for (var other : world.nodes) {
                if (side.contains(one.id) && !side.contains(other.id)) {
                    world.network.cut(one, other, howLong);
                }
            }
        }
        world.story.count(Happening.PARTITIONED);
        world.story.tell("the network falls apart for " + howLong);
    }

    private void goForGood(SimNode node) {
        if (world.nodes.stream().anyMatch(SimNode::isRestored)) {
            return;
        }
        someoneIsGone = true;
        node.goForGood();
        world.story.count(Happening.GONE_FOR_GOOD);
        world.story.tell(node + " is gone for good");
        for (var other : world.nodes) {
            world.at(world.millis() + dice.between(1, 120 * 60_000L), () -> other.setAside(node.id));
        }
        world.rules.somethingWasLost();
    }
}
