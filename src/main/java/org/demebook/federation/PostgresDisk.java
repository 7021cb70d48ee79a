package org.demebook.federation;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.demebook.protocol.Alarm;
import org.demebook.protocol.Disk;
import org.demebook.protocol.Kept;
import org.jspecify.annotations.Nullable;

/**
 * The federated journals of one population in PostgreSQL, in the transaction in which {@link Part} entered it. Used by one transaction at a
 * time. What is appended is gathered and written in one batch, at the latest before the change ends.
 */
final class PostgresDisk implements Disk {
    private final UUID population;
    private final DataSource database;

    private @Nullable Session session;

    /** What is known of the tables while a transaction has them. */
    private static final class Session {
        long version;
        final boolean mayWrite;
        boolean wrote;
        boolean broken;
        final Map<String, Long> sizes;
        final Map<String, List<Kept>> appended = new TreeMap<>();
        final Map<String, String> heads = new HashMap<>();

        Session(long version, boolean mayWrite, Map<String, Long> sizes) {
            this.version = version;
            this.mayWrite = mayWrite;
            this.sizes = sizes;
        }
    }

    PostgresDisk(UUID population, DataSource database) {
        this.population = population;
        this.database = database;
    }

    /** From here to {@link #leave} the calls stand in the present transaction. @param mayWrite with the rows locked */
    void enter(boolean mayWrite) {
        session = with(tables -> {
            var version = mayWrite ? tables.lockedVersion() : tables.version();
            return new Session(version, mayWrite, tables.sizes());
        });
    }

    void leave() {
        session = null;
    }

    boolean isEntered() {
        return session != null;
    }

    boolean mayWrite() {
        var here = session;
        return here != null && here.mayWrite;
    }

    /** A change that failed after it wrote something: the transaction has to be rolled back. */
    boolean isBroken() {
        var here = session;
        return here != null && here.broken;
    }

    @Override
    public <T> T change(Supplier<T> work) {
        var here = entered();
        boolean done = false;
        try {
            var result = work.get();
            if (here.wrote) {
                flush();
                here.version++;
                with(tables -> {
                    tables.keepVersion(here.version);
                    return null;
                });
            }
            done = true;
            return result;
        } finally {
            here.broken |= here.wrote && !done;
            here.wrote = false;
        }
    }

    @Override
    public long version() {
        var here = session;
        if (here == null) {
            return with(JournalTables::version);
        }
        return here.wrote ? here.version + 1 : here.version;
    }

    @Override
    public Set<String> journals() {
        var names = new TreeSet<String>();
        entered().sizes.forEach((node, size) -> {
            if (size > 0) {
                names.add(node);
            }
        });
        return names;
    }

    @Override
    public List<Kept> entries(String node, long after, int most) {
        flush();
        return with(tables -> tables.entries(node, after, most));
    }

    @Override
    public void append(String node, Kept kept) {
        var here = writing();
        long size = here.sizes.getOrDefault(node, 0L);
        if (kept.seq() != size + 1) {
            throw new IllegalStateException(
                    "entry %d of %s does not follow entry %d".formatted(kept.seq(), node, size));
        }
        here.sizes.put(node, kept.seq());
        here.appended.computeIfAbsent(node, n -> new ArrayList<>()).add(kept);
    }

    @Override
    public void fill(String node, Kept kept) {
        writing();
        flush();
        with(tables -> {
            tables.fill(node, kept);
            return null;
        });
    }

    @Override
    public long again(String node) {
        return with(tables -> tables.again(node));
    }

    @Override
    public void keepAgain(String node, long seq) {
        writing();
        flush();
        with(tables -> {
            tables.keepAgain(node, seq);
            return null;
        });
    }

    @Override
    public void erase(String node, Collection<Long> seqs) {
        writing();
        flush();
        with(tables -> {
            tables.erase(node, seqs);
            return null;
        });
    }

    @Override
    public Optional<String> head(String node) {
        var kept = entered().heads.get(node);
        return kept != null ? Optional.of(kept) : with(tables -> tables.head(node));
    }

    @Override
    public void keepHead(String node, String signedCheckpoint) {
        writing().heads.put(node, signedCheckpoint);
    }

    @Override
    public List<String> unchecked(String node) {
        return with(tables -> tables.unchecked(node));
    }

    @Override
    public void keepUnchecked(String node, List<String> signedCheckpoints) {
        writing();
        with(tables -> {
            tables.keepUnchecked(node, signedCheckpoints);
            return null;
        });
    }

    @Override
    public List<Alarm> alarms() {
        return with(JournalTables::alarms);
    }

    @Override
    public void raise(Alarm alarm) {
        writing();
        with(tables -> {
            tables.raise(alarm);
            return null;
        });
    }

    private void flush() {
        var here = entered();
        if (here.appended.isEmpty() && here.heads.isEmpty()) {
            return;
        }
        with(tables -> {
            var changed = new TreeSet<>(here.appended.keySet());
            changed.addAll(here.heads.keySet());
            for (var node : changed) {
                tables.keepJournal(node, here.sizes.getOrDefault(node, 0L), here.heads.get(node));
            }
            tables.append(here.appended);
            return null;
        });
        here.appended.clear();
        here.heads.clear();
    }

    private Session entered() {
        var here = session;
        if (here == null) {
            throw new IllegalStateException("outside a change");
        }
        return here;
    }

    private Session writing() {
        var here = entered();
        if (!here.mayWrite) {
            throw new IllegalStateException("a reading changes nothing");
        }
        here.wrote = true;
        return here;
    }

    private interface Work<T> {
        T on(JournalTables tables) throws SQLException;
    }

    private <T> T with(Work<T> work) {
        try (Connection connection = database.getConnection()) {
            return work.on(new JournalTables(connection, population));
        } catch (SQLException e) {
            throw new IllegalStateException("the federated journals of " + population, e);
        }
    }
}
