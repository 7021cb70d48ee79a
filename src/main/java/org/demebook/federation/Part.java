package org.demebook.federation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import org.demebook.protocol.Alarm;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Follower;
import org.demebook.protocol.Participant;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * This node's part in one population, in memory: a participant on its disk, for one transaction or reading at a time. Whoever changes
 * something holds the population in the database first, so that nobody waits here for somebody who waits there.
 */
final class Part implements Follower {
    private static final Logger LOG = Logger.getLogger(Part.class);
    private static final long LONGEST_WAIT_SECONDS = 30;

    /** What it is made of, asked with the disk entered. */
    interface Making {
        Participant participant(PostgresDisk disk, Follower follower);

        /** Nodes that the administrator set aside. */
        Set<String> aside();
    }

    /** What took effect and was not followed yet. */
    private sealed interface News permits Told, Gone {}

    private record Told(List<Entry> entries) implements News {}

    private record Gone(String node, List<Long> seqs) implements News {}

    final UUID population;
    private final String ownNode;
    private final PostgresDisk disk;
    private final Making making;
    private final Semaphore free = new Semaphore(1);
    private final List<News> news = new ArrayList<>();
    private @Nullable Object holder;
    private @Nullable Participant participant;
    private final Set<String> aside = new TreeSet<>();
    private volatile boolean established;
    private boolean following;
    private boolean wrote;

    Part(UUID population, String ownNode, PostgresDisk disk, Making making) {
        this.population = population;
        this.ownNode = ownNode;
        this.disk = disk;
        this.making = making;
    }

    /** Whether this transaction has it already. */
    boolean isHeldBy(Object transaction) {
        return transaction.equals(holder);
    }

    /** Takes it for the rest of a transaction, or for one reading. */
    void take(Object transaction, boolean mayWrite) {
        try {
            if (!free.tryAcquire(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS)) {
                throw new IllegalStateException(
                        "the federated journals of %s were not free in time".formatted(population));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
        boolean entered = false;
        try {
            holder = transaction;
            wrote = false;
            news.clear();
            disk.enter(mayWrite);
            if (participant == null) {
                participant = making.participant(disk, this);
            }
            setAside(participant);
            news.clear(); // what was folded anew had been followed before
            entered = true;
        } finally {
            if (!entered) {
                participant = established ? participant : null;
                leave(false);
            }
        }
    }

    /** What the administrator said stands in the register; the participant is told what it has not heard. */
    private void setAside(Participant told) {
        var now = making.aside();
        for (var node : now) {
            if (aside.add(node)) {
                told.setAside(node, true);
            }
        }
        for (var node : List.copyOf(aside)) {
            if (!now.contains(node)) {
                aside.remove(node);
                told.setAside(node, false);
            }
        }
    }

    /** @param kept whether what was done since {@link #take} holds; where not, the participant sees by the disk's version that it does not */
    void leave(boolean kept) {
        established |= kept;
        disk.leave();
        holder = null;
        following = false;
        news.clear();
        free.release();
    }

    /** Whether anything that was done with it ever held. */
    boolean isEstablished() {
        return established;
    }

    boolean mayWrite() {
        return disk.mayWrite();
    }

    /** Whether the transaction cannot be committed. */
    boolean isBroken() {
        return disk.isBroken();
    }

    /** Whether own entries were written since {@link #take}. */
    boolean hasWritten() {
        return wrote;
    }

    <T> T read(Function<Participant, T> work) {
        return work.apply(present());
    }

    /** Works, and has followed what took effect by it, until nothing does any more. */
    <T> T change(Function<Participant, T> work, Supplier<? extends Iterable<Consequence>> consequences) {
        var result = work.apply(present());
        if (following) {
            return result; // within a consequence: whoever called that goes on
        }
        following = true;
        try {
            while (!news.isEmpty()) {
                var now = List.copyOf(news);
                news.clear();
                for (var each : now) {
                    consequences.get().forEach(consequence -> tell(consequence, each));
                }
            }
        } finally {
            following = false;
        }
        return result;
    }

    private void tell(Consequence consequence, News now) {
        if (now instanceof Told told) {
            consequence.follow(population, present(), told.entries());
        } else if (now instanceof Gone gone) {
            consequence.forget(population, present(), gone.node(), gone.seqs());
        }
    }

    private Participant present() {
        var here = participant;
        if (here == null) {
            throw new IllegalStateException("not taken");
        }
        return here;
    }

    // ── what the participant tells ───────────────────────────────────────────────────────────────────────────────────

    @Override
    public void follow(Entry entry) {
        wrote |= entry.node().equals(ownNode);
        if (!news.isEmpty() && news.get(news.size() - 1) instanceof Told told) {
            told.entries().add(entry);
        } else {
            news.add(new Told(new ArrayList<>(List.of(entry))));
        }
    }

    @Override
    public void forget(String node, Collection<Long> seqs) {
        news.add(new Gone(node, List.copyOf(seqs)));
    }

    @Override
    public void raised(Alarm alarm) {
        LOG.warnf("population %s, %s: %s", population, alarm.kind(), alarm.sentence());
    }
}
