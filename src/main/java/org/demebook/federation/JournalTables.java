package org.demebook.federation;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.protocol.Alarm;
import org.demebook.protocol.Kept;
import org.demebook.signing.CanonicalJson;
import org.jspecify.annotations.Nullable;

/** The SQL of the federated journals of one population. */
record JournalTables(Connection connection, UUID population) {
    private static final String LOCKED =
            "select version from demebook.federated_store where population_id = ? for update";
    private static final int MOST_EVIDENCE_BYTES = 1 << 24;

    /** 0 where nothing was written yet. */
    long version() throws SQLException {
        return number("select version from demebook.federated_store where population_id = ?", 0);
    }

    /** The same; who comes second waits until the transaction ends. */
    long lockedVersion() throws SQLException {
        long version = number(LOCKED, -1);
        if (version >= 0) {
            return version;
        }
        try (var insert = connection.prepareStatement("insert into demebook.federated_store (population_id, version)"
                + " values (?, 0) on conflict do nothing")) {
            insert.setObject(1, population);
            insert.executeUpdate();
        }
        return number(LOCKED, 0);
    }

    void keepVersion(long version) throws SQLException {
        try (var update = connection.prepareStatement(
                "update demebook.federated_store set version = ? where population_id = ?")) {
            update.setLong(1, version);
            update.setObject(2, population);
            update.executeUpdate();
        }
    }

    Map<String, Long> sizes() throws SQLException {
        try (var query = connection.prepareStatement(
                "select node_id, size from demebook.federated_journal where population_id = ?")) {
            query.setObject(1, population);
            var sizes = new HashMap<String, Long>();
            try (var row = query.executeQuery()) {
                while (row.next()) {
                    sizes.put(row.getString(1), row.getLong(2));
                }
            }
            return sizes;
        }
    }

    /** @param head null: as it was */
    void keepJournal(String node, long size, @Nullable String head) throws SQLException {
        try (var upsert = connection.prepareStatement(
                "insert into demebook.federated_journal as j (population_id, node_id, size, head) values (?, ?, ?, ?)"
                        + " on conflict (population_id, node_id) do update"
                        + " set size = excluded.size, head = coalesce(excluded.head, j.head)")) {
            upsert.setObject(1, population);
            upsert.setString(2, node);
            upsert.setLong(3, size);
            upsert.setString(4, head);
            upsert.executeUpdate();
        }
    }

    List<Kept> entries(String node, long after, int most) throws SQLException {
        try (var query =
                connection.prepareStatement("select seq, digest, entry, salt, readers from demebook.federated_entry"
                        + " where population_id = ? and node_id = ? and seq > ? order by seq limit ?")) {
            query.setObject(1, population);
            query.setString(2, node);
            query.setLong(3, after);
            query.setInt(4, most);
            var entries = new ArrayList<Kept>();
            try (var row = query.executeQuery()) {
                while (row.next()) {
                    entries.add(kept(row));
                }
            }
            return entries;
        }
    }

    private static Kept kept(ResultSet row) throws SQLException {
        var readers = row.getArray(5);
        return new Kept(
                row.getLong(1),
                row.getBytes(2),
                Optional.ofNullable(row.getBytes(3)).map(bytes -> new String(bytes, StandardCharsets.US_ASCII)),
                Optional.ofNullable(row.getBytes(4)),
                readers == null ? Optional.empty() : Optional.of(Set.of((String[]) readers.getArray())));
    }

    void append(Map<String, List<Kept>> entries) throws SQLException {
        try (var insert = connection.prepareStatement("insert into demebook.federated_entry"
                + " (population_id, node_id, seq, digest, entry, salt, readers) values (?, ?, ?, ?, ?, ?, ?)")) {
            for (var ofNode : entries.entrySet()) {
                for (var kept : ofNode.getValue()) {
                    bind(insert, ofNode.getKey(), kept);
                    insert.addBatch();
                }
            }
            insert.executeBatch();
        }
    }

    private void bind(PreparedStatement insert, String node, Kept kept) throws SQLException {
        insert.setObject(1, population);
        insert.setString(2, node);
        insert.setLong(3, kept.seq());
        insert.setBytes(4, kept.digest());
        insert.setBytes(
                5,
                kept.entry()
                        .map(text -> text.getBytes(StandardCharsets.US_ASCII))
                        .orElse(null));
        insert.setBytes(6, kept.salt().orElse(null));
        insert.setArray(
                7,
                kept.readers().isPresent()
                        ? connection.createArrayOf(
                                "text", kept.readers().get().stream().sorted().toArray())
                        : null);
    }

    /** Of an entry of which there is the digest alone. */
    void fill(String node, Kept kept) throws SQLException {
        try (var update = connection.prepareStatement("update demebook.federated_entry set entry = ?, salt = ?"
                + " where population_id = ? and node_id = ? and seq = ? and entry is null")) {
            update.setBytes(1, kept.entry().orElseThrow().getBytes(StandardCharsets.US_ASCII));
            update.setBytes(2, kept.salt().orElseThrow());
            update.setObject(3, population);
            update.setString(4, node);
            update.setLong(5, kept.seq());
            update.executeUpdate();
        }
    }

    long again(String node) throws SQLException {
        try (var query = connection.prepareStatement(
                "select again from demebook.federated_journal where population_id = ? and node_id = ?")) {
            query.setObject(1, population);
            query.setString(2, node);
            try (var row = query.executeQuery()) {
                return row.next() ? row.getLong(1) : 0;
            }
        }
    }

    /** Of a journal of which there are entries. */
    void keepAgain(String node, long seq) throws SQLException {
        try (var update = connection.prepareStatement(
                "update demebook.federated_journal set again = ? where population_id = ? and node_id = ?")) {
            update.setLong(1, seq);
            update.setObject(2, population);
            update.setString(3, node);
            update.executeUpdate();
        }
    }

    void erase(String node, Collection<Long> seqs) throws SQLException {
        try (var update = connection.prepareStatement("update demebook.federated_entry set entry = null, salt = null"
                + " where population_id = ? and node_id = ? and seq = any (?)")) {
            update.setObject(1, population);
            update.setString(2, node);
            update.setArray(3, connection.createArrayOf("bigint", seqs.toArray()));
            update.executeUpdate();
        }
    }

    Optional<String> head(String node) throws SQLException {
        return texts(
                        "select head from demebook.federated_journal where population_id = ? and node_id = ? and head is not null",
                        node)
                .stream()
                .findFirst();
    }

    List<String> unchecked(String node) throws SQLException {
        return texts(
                "select head from demebook.federated_unchecked where population_id = ? and node_id = ? order by place",
                node);
    }

    void keepUnchecked(String node, List<String> heads) throws SQLException {
        try (var delete = connection.prepareStatement(
                "delete from demebook.federated_unchecked where population_id = ? and node_id = ?")) {
            delete.setObject(1, population);
            delete.setString(2, node);
            delete.executeUpdate();
        }
        try (var insert = connection.prepareStatement("insert into demebook.federated_unchecked"
                + " (population_id, node_id, place, head) values (?, ?, ?, ?)")) {
            for (int place = 0; place < heads.size(); place++) {
                insert.setObject(1, population);
                insert.setString(2, node);
                insert.setInt(3, place);
                insert.setString(4, heads.get(place));
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    List<Alarm> alarms() throws SQLException {
        try (var query = connection.prepareStatement(
                "select id, kind, accused, evidence, sentence, noticed_at from demebook.federation_alarm"
                        + " where population_id = ? order by noticed_at, id")) {
            query.setObject(1, population);
            var alarms = new ArrayList<Alarm>();
            try (var row = query.executeQuery()) {
                while (row.next()) {
                    alarms.add(new Alarm(
                            row.getString(1),
                            Alarm.Kind.valueOf(row.getString(2)),
                            row.getString(3),
                            Optional.ofNullable(row.getString(4)).map(JournalTables::evidence),
                            row.getString(5),
                            row.getObject(6, OffsetDateTime.class).toInstant()));
                }
            }
            return alarms;
        }
    }

    private static ObjectNode evidence(String text) {
        return CanonicalJson.read(text.getBytes(StandardCharsets.UTF_8), MOST_EVIDENCE_BYTES);
    }

    void raise(Alarm alarm) throws SQLException {
        try (var insert = connection.prepareStatement("insert into demebook.federation_alarm"
                + " (population_id, id, kind, accused, evidence, sentence, noticed_at) values (?, ?, ?, ?, ?, ?, ?)"
                + " on conflict do nothing")) {
            insert.setObject(1, population);
            insert.setString(2, alarm.id());
            insert.setString(3, alarm.kind().name());
            insert.setString(4, alarm.accused());
            insert.setString(
                    5,
                    alarm.evidence()
                            .map(json -> new String(CanonicalJson.write(json), StandardCharsets.UTF_8))
                            .orElse(null));
            insert.setString(6, alarm.sentence());
            insert.setObject(7, alarm.noticedAt().atOffset(ZoneOffset.UTC));
            insert.executeUpdate();
        }
    }

    private long number(String sql, long none) throws SQLException {
        try (var query = connection.prepareStatement(sql)) {
            query.setObject(1, population);
            try (var row = query.executeQuery()) {
                return row.next() ? row.getLong(1) : none;
            }
        }
    }

    private List<String> texts(String sql, String node) throws SQLException {
        try (var query = connection.prepareStatement(sql)) {
            query.setObject(1, population);
            query.setString(2, node);
            var texts = new ArrayList<String>();
            try (var row = query.executeQuery()) {
                while (row.next()) {
                    texts.add(row.getString(1));
                }
            }
            return texts;
        }
    }
}
