package org.demebook.protocol.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.demebook.protocol.Surroundings;

/** What a node takes for the time, off by up to days, and its own randomness. */
final class SimClock implements Surroundings {
    private final World world;
    private final Dice dice;
    private Duration off;

    SimClock(World world, Dice dice, Duration off) {
        this.world = world;
        this.dice = dice;
        this.off = off;
    }

    void jump(Duration by) {
        off = off.plus(by);
    }

    @Override
    public Instant now() {
        return world.now().plus(off);
    }

    @Override
    public byte[] salt() {
        return dice.bytes(32);
    }

    @Override
    public UUID newId() {
        return dice.id();
    }
}
