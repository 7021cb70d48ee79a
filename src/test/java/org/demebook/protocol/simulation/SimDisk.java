package org.demebook.protocol.simulation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.demebook.protocol.Alarm;
import org.demebook.protocol.Disk;
import org.demebook.protocol.Kept;

/** A disk in memory, with transactions, whose power can be cut at any write, before and after a commit, and which can be restored. */
class SimDisk implements Disk {
    /** Where in a change the power fails. */
    enum Moment {
        BEFORE_A_WRITE,
        BEFORE_THE_COMMIT,
        AFTER_THE_COMMIT
    }

    /** Something that became durable: an entry or a head of a journal, a head that is not checked yet included. */
    record Written(SimDisk disk, String journal, Optional<Kept> entry, Optional<String> head) {}

    /** All that a disk holds at one moment. */
    static final class State {
        private final SortedMap<String, List<Kept>> journals = new TreeMap<>();
        private final Map<String, String> heads = new HashMap<>();
        private final Map<String, List<String>> unchecked = new HashMap<>();
        private final Map<String, Long> again = new HashMap<>();
        private final Map<String, Alarm> alarms = new LinkedHashMap<>();
        private long version;

        private State copy() {
            var copy = new State();
            journals.forEach((node, entries) -> copy.journals.put(node, new ArrayList<>(entries)));
            copy.heads.putAll(heads);
            copy.unchecked.putAll(unchecked);
            copy.again.putAll(again);
            copy.alarms.putAll(alarms);
            copy.version = version;
            return copy;
        }

        private List<Kept> journal(String node) {
            return journals.getOrDefault(node, List.of());
        }
    }

    private final Consumer<Written> watcher;
    private State durable = new State();
    private State seen = durable;
    private final List<Written> written = new ArrayList<>();
    private boolean changing;
    private boolean powered = true;
    private Optional<Moment> cut = Optional.empty();
    private int writesUntilCut;

    SimDisk(Consumer<Written> watcher) {
        this.watcher = watcher;
    }

    // ── what only the world does ─────────────────────────────────────────────────────────────────────────────────────

    /** @param writes how many more writes come through before */
    void cutAt(Moment moment, int writes) {
        cut = Optional.of(moment);
        writesUntilCut = writes;
    }

    void powerOff() {
        powered = false;
        changing = false;
        seen = durable;
        written.clear();
    }

    void powerOn() {
        powered = true;
        cut = Optional.empty();
    }

    void steady() {
        cut = Optional.empty();
    }

    State backup() {
        return durable.copy();
    }

    void restore(State backup) {
        durable = backup.copy();
        seen = durable;
    }

    /** What of a journal is there; not to be changed. */
    List<Kept> journal(String node) {
        return seen.journal(node);
    }

    Optional<Kept> entry(String node, long seq) {
        var journal = journal(node);
        return seq <= journal.size() ? Optional.of(journal.get((int) seq - 1)) : Optional.empty();
    }

    Collection<Alarm> raised() {
        return durable.alarms.values();
    }

    // ── what a participant does ──────────────────────────────────────────────────────────────────────────────────────

    @Override
    public <T> T change(Supplier<T> work) {
        if (!powered || changing) {
            throw new IllegalStateException(powered ? "a change within a change" : "this disk has no power");
        }
        changing = true;
        try {
            T result = work.get();
            commit();
            return result;
        } finally {
            changing = false;
            seen = durable;
            written.clear();
        }
    }

    private void commit() {
        if (seen == durable) {
            return;
        }
        fail(Moment.BEFORE_THE_COMMIT);
        keep(seen);
        written.forEach(watcher);
        fail(Moment.AFTER_THE_COMMIT);
    }

    /** Makes it durable. */
    void keep(State changed) {
        durable = changed;
    }

    private void fail(Moment moment) {
        if (cut.filter(moment::equals).isPresent()) {
            cut = Optional.empty();
            throw new PowerCut(this, moment);
        }
    }

    private State toWrite() {
        if (!changing) {
            throw new IllegalStateException("a write outside a change");
        }
        if (writesUntilCut-- <= 0) {
            fail(Moment.BEFORE_A_WRITE);
        }
        if (seen == durable) {
            seen = durable.copy();
            seen.version++;
        }
        return seen;
    }

    private State toRead() {
        if (!changing) {
            throw new IllegalStateException("a reading outside a change");
        }
        return seen;
    }

    @Override
    public long version() {
        return seen.version;
    }

    @Override
    public Set<String> journals() {
        return Set.copyOf(toRead().journals.keySet());
    }

    @Override
    public List<Kept> entries(String node, long after, int most) {
        var journal = toRead().journal(node);
        int from = (int) Math.min(after, journal.size());
        return List.copyOf(journal.subList(from, (int) Math.min(journal.size(), (long) from + most)));
    }

    @Override
    public void append(String node, Kept kept) {
        var journal = toWrite().journals.computeIfAbsent(node, any -> new ArrayList<>());
        if (kept.seq() != journal.size() + 1) {
            throw new IllegalStateException("entry %d after %d".formatted(kept.seq(), journal.size()));
        }
        journal.add(kept);
        written.add(new Written(this, node, Optional.of(kept), Optional.empty()));
    }

    @Override
    public void fill(String node, Kept kept) {
        var journal = toWrite().journals.get(node);
        int index = (int) kept.seq() - 1;
        if (journal.get(index).entry().isPresent()) {
            throw new IllegalStateException("entry %d is filled twice".formatted(kept.seq()));
        }
        journal.set(index, kept);
        written.add(new Written(this, node, Optional.of(kept), Optional.empty()));
    }

    @Override
    public long again(String node) {
        return toRead().again.getOrDefault(node, 0L);
    }

    @Override
    public void keepAgain(String node, long seq) {
        toWrite().again.put(node, seq);
    }

    @Override
    public void erase(String node, Collection<Long> seqs) {
        var state = toWrite();
        for (long seq : seqs) {
            var journal = state.journals.get(node);
            var kept = journal.get((int) seq - 1);
            journal.set(
                    (int) seq - 1, new Kept(seq, kept.digest(), Optional.empty(), Optional.empty(), kept.readers()));
        }
    }

    @Override
    public Optional<String> head(String node) {
        return Optional.ofNullable(toRead().heads.get(node));
    }

    @Override
    public void keepHead(String node, String signedCheckpoint) {
        toWrite().heads.put(node, signedCheckpoint);
        written.add(new Written(this, node, Optional.empty(), Optional.of(signedCheckpoint)));
    }

    @Override
    public List<String> unchecked(String node) {
        return toRead().unchecked.getOrDefault(node, List.of());
    }

    @Override
    public void keepUnchecked(String node, List<String> signedCheckpoints) {
        toWrite().unchecked.put(node, List.copyOf(signedCheckpoints));
        for (var head : signedCheckpoints) {
            written.add(new Written(this, node, Optional.empty(), Optional.of(head)));
        }
    }

    @Override
    public List<Alarm> alarms() {
        return List.copyOf(toRead().alarms.values());
    }

    @Override
    public void raise(Alarm alarm) {
        toWrite().alarms.putIfAbsent(alarm.id(), alarm);
    }
}
