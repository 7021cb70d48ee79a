package org.demebook.protocol;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;

/** A disk in memory that never fails. */
final class MemoryDisk implements Disk {
    private final Map<String, List<Kept>> journals = new TreeMap<>();
    private final Map<String, String> heads = new HashMap<>();
    private final Map<String, List<String>> unchecked = new HashMap<>();
    private final Map<String, Alarm> alarms = new LinkedHashMap<>();
    private long version;

    @Override
    public <T> T change(Supplier<T> work) {
        return work.get();
    }

    @Override
    public long version() {
        return version;
    }

    @Override
    public Set<String> journals() {
        return Set.copyOf(journals.keySet());
    }

    @Override
    public List<Kept> entries(String node, long after, int most) {
        var journal = journals.getOrDefault(node, List.of());
        int from = (int) Math.min(after, journal.size());
        return List.copyOf(journal.subList(from, (int) Math.min(journal.size(), (long) from + most)));
    }

    @Override
    public void append(String node, Kept kept) {
        journals.computeIfAbsent(node, missing -> new ArrayList<>()).add(kept);
        version++;
    }

    @Override
    public void erase(String node, Collection<Long> seqs) {
        seqs.forEach(seq -> journals.get(node)
                .replaceAll(kept -> kept.seq() == seq
                        ? new Kept(seq, kept.digest(), Optional.empty(), Optional.empty(), kept.readers())
                        : kept));
        version++;
    }

    @Override
    public Optional<String> head(String node) {
        return Optional.ofNullable(heads.get(node));
    }

    @Override
    public void keepHead(String node, String signedCheckpoint) {
        heads.put(node, signedCheckpoint);
        version++;
    }

    @Override
    public List<String> unchecked(String node) {
        return unchecked.getOrDefault(node, List.of());
    }

    @Override
    public void keepUnchecked(String node, List<String> signedCheckpoints) {
        unchecked.put(node, signedCheckpoints);
        version++;
    }

    @Override
    public List<Alarm> alarms() {
        return List.copyOf(alarms.values());
    }

    @Override
    public void raise(Alarm alarm) {
        alarms.put(alarm.id(), alarm);
        version++;
    }
}
