package org.demebook.protocol;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;

/** A disk in memory, for a look at a population that is thrown away afterwards: a change that fails is not taken back. */
public final class MemoryDisk implements Disk {
    private final Map<String, List<Kept>> entries = new TreeMap<>();
    private final Map<String, Long> again = new HashMap<>();
    private final Map<String, String> heads = new HashMap<>();
    private final Map<String, List<String>> unchecked = new HashMap<>();
    private final List<Alarm> alarms = new ArrayList<>();
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
        return Set.copyOf(entries.keySet());
    }

    @Override
    public List<Kept> entries(String node, long after, int most) {
        var all = entries.getOrDefault(node, List.of());
        int from = (int) Math.min(after, all.size());
        return List.copyOf(all.subList(from, Math.min(all.size(), from + most)));
    }

    @Override
    public void append(String node, Kept kept) {
        version++;
        entries.computeIfAbsent(node, n -> new ArrayList<>()).add(kept);
    }

    @Override
    public void fill(String node, Kept kept) {
        version++;
        entries.get(node).set((int) kept.seq() - 1, kept);
    }

    @Override
    public long again(String node) {
        return again.getOrDefault(node, 0L);
    }

    @Override
    public void keepAgain(String node, long seq) {
        version++;
        again.put(node, seq);
    }

    @Override
    public void erase(String node, Collection<Long> seqs) {
        version++;
        entries.getOrDefault(node, List.of())
                .replaceAll(kept -> seqs.contains(kept.seq())
                        ? new Kept(kept.seq(), kept.digest(), Optional.empty(), Optional.empty(), kept.readers())
                        : kept);
    }

    @Override
    public Optional<String> head(String node) {
        return Optional.ofNullable(heads.get(node));
    }

    @Override
    public void keepHead(String node, String signedCheckpoint) {
        version++;
        heads.put(node, signedCheckpoint);
    }

    @Override
    public List<String> unchecked(String node) {
        return unchecked.getOrDefault(node, List.of());
    }

    @Override
    public void keepUnchecked(String node, List<String> signedCheckpoints) {
        version++;
        unchecked.put(node, List.copyOf(signedCheckpoints));
    }

    @Override
    public List<Alarm> alarms() {
        return List.copyOf(alarms);
    }

    @Override
    public void raise(Alarm alarm) {
        version++;
        alarms.add(alarm);
    }
}
