package org.demebook.federation;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Saying;
import org.jspecify.annotations.Nullable;

/**
 * Several callers' statements in one transaction. Who comes while another writes waits for it, and then one of those who waited writes
 * for all of them: an idle journal answers as fast as ever, a busy one pays for one commit a batch.
 */
@ApplicationScoped
class GroupCommit {
    private static final int MOST_SAYINGS = 256;

    private final ConcurrentHashMap<UUID, Line> lines = new ConcurrentHashMap<>();

    private static final class Waiting {
        final List<Saying> sayings;
        volatile @Nullable List<Entry> written;
        volatile @Nullable RuntimeException failed;

        Waiting(List<Saying> sayings) {
            this.sayings = sayings;
        }

        boolean isAnswered() {
            return written != null || failed != null;
        }

        List<Entry> answer() {
            var failure = failed;
            if (failure != null) {
                throw failure;
            }
            var entries = written;
            if (entries == null) {
                throw new IllegalStateException("not answered");
            }
            return entries;
        }
    }

    private static final class Line {
        final ReentrantLock writing = new ReentrantLock(true);
        final Queue<Waiting> waiting = new ArrayDeque<>();

        synchronized void add(Waiting who) {
            waiting.add(who);
        }

        synchronized List<Waiting> batch() {
            var batch = new ArrayList<Waiting>();
            int sayings = 0;
            while (!waiting.isEmpty()
                    && (batch.isEmpty() || sayings + waiting.peek().sayings.size() <= MOST_SAYINGS)) {
                var next = waiting.remove();
                sayings += next.sayings.size();
                batch.add(next);
            }
            return batch;
        }
    }

    /**
     * @param write writes them in a transaction of its own: all, or none and throws
     * @throws RuntimeException what {@code write} threw of these sayings alone
     */
    List<Entry> write(UUID population, List<Saying> sayings, Function<List<Saying>, List<Entry>> write) {
        var line = lines.computeIfAbsent(population, id -> new Line());
        var mine = new Waiting(List.copyOf(sayings));
        line.add(mine);
        while (!mine.isAnswered()) {
            line.writing.lock();
            try {
                if (!mine.isAnswered()) {
                    writeAll(line.batch(), write);
                }
            } finally {
                line.writing.unlock();
            }
        }
        return mine.answer();
    }

    private static void writeAll(List<Waiting> batch, Function<List<Saying>, List<Entry>> write) {
        boolean told = false;
        try {
            var all = batch.stream().flatMap(one -> one.sayings.stream()).toList();
            var entries = write.apply(all);
            int from = 0;
            for (var one : batch) {
                int to = from + one.sayings.size();
                one.written = List.copyOf(entries.subList(from, to));
                from = to;
            }
            told = true;
        } catch (RuntimeException e) {
            if (batch.size() == 1) {
                batch.get(0).failed = e;
            } else {
                // one of them spoilt it for the others
                batch.forEach(one -> writeAll(List.of(one), write));
            }
            told = true;
        } finally {
            if (!told) {
                batch.forEach(one -> one.failed = new IllegalStateException("an error ended the thread that wrote"));
            }
        }
    }
}
