package org.demebook.protocol.simulation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.demebook.protocol.Alarm;
import org.demebook.protocol.Entry;
import org.demebook.protocol.FeedPage;
import org.demebook.protocol.Follower;
import org.demebook.protocol.Membership;
import org.demebook.protocol.Participant;
import org.demebook.signing.KeyChain;
import org.demebook.signing.SigningKey;

/** A node: a disk and a clock that stay, and a participant that is there between a start and a fall. */
class SimNode {
    private static final int MOST_BACKUPS = 3;

    final World world;
    final int number;
    final String name;
    final String id;
    final SimDisk disk;
    final SimClock clock;
    /** Whom the administrator set aside. */
    final Set<String> aside = new TreeSet<>();

    final List<SimDisk.State> backups = new ArrayList<>();
    private Participant participant;
    private int starts;
    private int generation;
    private boolean gone;
    private boolean restored;

    SimNode(World world, int number, String name, SimDisk disk, SimClock clock) {
        this.world = world;
        this.number = number;
        this.name = name;
        this.disk = disk;
        this.clock = clock;
        id = Keys.chain(number, 0).nodeId();
    }

    /** @throws IllegalStateException if it does not run */
    Participant participant() {
        if (participant == null) {
            throw new IllegalStateException(name + " does not run");
        }
        return participant;
    }

    boolean runs() {
        return participant != null;
    }

    boolean writes() {
        return runs() && !participant.fenced();
    }

    /** Which start this is: what was asked before it is not answered after it. */
    int starts() {
        return starts;
    }

    boolean isGone() {
        return gone;
    }

    /** Whether it was restored from an old backup and has not yet heard how far its journal had gone. */
    boolean isRestored() {
        return restored;
    }

    void start() {
        starts++;
        disk.powerOn();
        participant = participantOn(disk);
        aside.forEach(node -> participant.setAside(node, true));
    }

    /** A further one over that disk, folded from nothing. */
    Participant participantOn(SimDisk itsDisk) {
        var membership = new Membership(world.population(), world.founder().id, this::keys, this::key);
        return new Participant(membership, itsDisk, clock, new Reader());
    }

    void fall() {
        participant = null;
        disk.powerOff();
    }

    /** Never to come back, and its disk with it. */
    void goForGood() {
        fall();
        gone = true;
        restored = false;
    }

    void backUp() {
        backups.add(disk.backup());
        if (backups.size() > MOST_BACKUPS) {
            backups.remove(0);
        }
    }

    void restore(SimDisk.State backup) {
        fall();
        disk.restore(backup);
        restored = true;
    }

    void madeWhole() {
        restored = false;
    }

    void setAside(String node) {
        if (aside.add(node) && runs()) {
            participant.setAside(node, true);
        }
    }

    /** What it gives to whoever asks. */
    FeedPage give(String asker, String journal, long after, int most) {
        return participant().entries(asker, journal, after, most);
    }

    int generation() {
        return generation;
    }

    /** Keys are files of their own: no restore of the disk brings an old one back. */
    void changeKey() {
        generation++;
    }

    private KeyChain keys() {
        return Keys.chain(number, generation);
    }

    private SigningKey key() {
        return Keys.key(number, generation);
    }

    @Override
    public String toString() {
        return name;
    }

    /** Lets the world know what the bytes of an entry say. */
    private final class Reader implements Follower {
        @Override
        public void follow(Entry entry) {
            world.learn(entry);
        }

        @Override
        public void forget(String node, Collection<Long> seqs) {}

        @Override
        public void raised(Alarm alarm) {}
    }
}
