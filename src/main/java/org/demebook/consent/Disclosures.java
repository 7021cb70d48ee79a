package org.demebook.consent;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.sql.Array;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.demebook.consent.NewGrant.StatedRecipient;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.rest.Page;
import org.demebook.wall.Wall;
import org.jspecify.annotations.Nullable;

/**
 * Who saw what of whom, on which grant: written before an answer goes out that rests on a grant, added up by day, and read
 * by the keepers whose collection gave the grant. Why it stands beside the journal: docs/decisions/0009.
 */
@ApplicationScoped
public class Disclosures {
    private static final String ADD = """
            insert into demebook.disclosure (population_id, collection_id, seen_on, seen_by, grant_id, purpose, action,
                field_group, times)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?)
            on conflict (population_id, collection_id, seen_on, seen_by, grant_id, purpose, action, field_group)
            do update set times = disclosure.times + excluded.times
            """;

    private static final String KEY =
            "to_char(seen_on, 'YYYY-MM-DD') || '|' || seen_by || '|' || collection_id || '|' || grant_id || '|' || purpose"
                    + " || '|' || action || '|' || field_group";

    private static final String PAGE = """
            select collection_id, seen_on, seen_by, grant_id, purpose, action, field_group, times, %1$s
            from demebook.disclosure
            where population_id = ? and collection_id = any (?) and (cast(? as text) is null or (%1$s) collate "C" < ?)
            order by (%1$s) collate "C" desc
            limit ?
            """.formatted(KEY);

    private static final int KNOWN_ROWS = 100_000;

    @Inject
    DataSource database;

    @Inject
    Wall wall;

    @Inject
    Keepers keepers;

    /** What was seen on a day by one asker on one grant, of one field group. */
    private record Row(
            UUID populationId,
            UUID collectionId,
            LocalDate seenOn,
            String seenBy,
            UUID grantId,
            String purpose,
            String action,
            String fieldGroup) {}

    private final Cache<Row, Boolean> written = Caffeine.newBuilder()
            .maximumSize(KNOWN_ROWS)
            .expireAfterWrite(Duration.ofDays(1))
            .build();

    private final Map<Row, Long> waiting = new ConcurrentHashMap<>();

    /**
     * Writes down what a lens allowed since this was called last; nothing when that rests on no grant. The first look of a day
     * at a field group on a grant is in the database when this returns, further ones are added to it within seconds. Takes no
     * lock on the population, and waits for no transaction of the reader's.
     */
    void record(Lens lens) {
        var seenOn = LocalDate.ofInstant(lens.at(), ZoneOffset.UTC);
        var seenBy = seenBy(lens.audience());
        var first = new HashMap<Row, Long>();
        lens.untold()
                .forEach((use, fieldGroups) -> fieldGroups.forEach((fieldGroup, animals) -> {
                    var row = new Row(
                            lens.audience().populationId(),
                            use.collectionId(),
                            seenOn,
                            seenBy,
                            use.grantId(),
                            lens.purpose().word(),
                            use.action().word(),
                            fieldGroup.word());
                    if (written.getIfPresent(row) == null) {
                        first.put(row, (long) animals.size());
                    } else {
                        waiting.merge(row, (long) animals.size(), Long::sum);
                    }
                }));
        write(first);
        first.keySet().forEach(row -> written.put(row, true));
    }

    /** Adds up what has come since. */
    @Scheduled(every = "2s", delayed = "2s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void addUp() {
        var rows = new HashMap<Row, Long>();
        for (var row : waiting.keySet()) {
            var times = waiting.remove(row);
            if (times != null) {
                rows.put(row, times);
            }
        }
        write(rows);
    }

    /** In one order, so that two writers do not wait in a circle. */
    private void write(Map<Row, Long> rows) {
        if (rows.isEmpty()) {
            return;
        }
        QuarkusTransaction.requiringNew().run(() -> {
            // of others, and not for the reader to read
            wall.openForWriting();
            try (var connection = database.getConnection();
                    var add = connection.prepareStatement(ADD)) {
                for (var row : rows.keySet().stream()
                        .sorted(Comparator.comparing(Row::toString))
                        .toList()) {
                    var values = new Object[] {
                        row.populationId,
                        row.collectionId,
                        row.seenOn,
                        row.seenBy,
                        row.grantId,
                        row.purpose,
                        row.action,
                        row.fieldGroup,
                        rows.get(row)
                    };
                    for (int i = 0; i < values.length; i++) {
                        add.setObject(i + 1, values[i]);
                    }
                    add.addBatch();
                }
                add.executeBatch();
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        });
    }

    /** What was seen of the collections that the asker acts for, the latest day first. */
    @Transactional
    public Page<DisclosureView> page(Standing by, @Nullable String after, int limit) {
        addUp();
        var own = keepers.collectionIds(by);
        var lines = new ArrayList<Line>();
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(PAGE)) {
            query.setObject(1, by.populationId());
            query.setArray(2, uuids(connection, own));
            query.setString(3, after);
            query.setString(4, after);
            query.setInt(5, limit + 1);
            try (var row = query.executeQuery()) {
                while (row.next()) {
                    lines.add(Line.of(row));
                }
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        var keeperIds = new HashSet<UUID>();
        lines.stream().map(Line::keeperId).forEach(id -> {
            if (id != null) {
                keeperIds.add(id);
            }
        });
        var names = keepers.names(keeperIds);
        var page = Page.of(lines, limit, Line::key);
        return new Page<>(page.items().stream().map(line -> line.view(names)).toList(), page.next());
    }

    private record Line(
            String seenBy,
            UUID collectionId,
            LocalDate seenOn,
            UUID grantId,
            String purpose,
            String action,
            String fieldGroup,
            long times,
            String key) {
        static Line of(ResultSet row) throws SQLException {
            return new Line(
                    row.getString(3),
                    row.getObject(1, UUID.class),
                    row.getObject(2, LocalDate.class),
                    row.getObject(4, UUID.class),
                    row.getString(5),
                    row.getString(6),
                    row.getString(7),
                    row.getLong(8),
                    row.getString(9));
        }

        @Nullable
        UUID keeperId() {
            return seenBy.equals("public") || seenBy.startsWith("node ") ? null : UUID.fromString(seenBy);
        }

        DisclosureView view(Map<UUID, String> names) {
            var keeperId = keeperId();
            var seer = keeperId != null
                    ? new StatedRecipient(Recipient.Kind.KEEPER, names.get(keeperId), null)
                    : seenBy.equals("public")
                            ? new StatedRecipient(Recipient.Kind.PUBLIC, null, null)
                            : new StatedRecipient(Recipient.Kind.NODE, null, seenBy.substring("node ".length()));
            return new DisclosureView(
                    seenOn,
                    seer,
                    collectionId,
                    grantId,
                    Purpose.parse(purpose),
                    Action.parse(action),
                    FieldGroup.parse(fieldGroup),
                    times);
        }
    }

    private static String seenBy(Audience audience) {
        if (audience.keeperId() != null) {
            return audience.keeperId().toString();
        }
        return audience.node() == null ? "public" : "node " + audience.node();
    }

    private static Array uuids(Connection connection, Set<UUID> ids) throws SQLException {
        return connection.createArrayOf("uuid", ids.toArray());
    }
}
