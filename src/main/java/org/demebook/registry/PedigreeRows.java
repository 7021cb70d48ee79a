package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/**
 * Reads a population, or what changed in it, in one statement: no entities, and one state of the register however long it
 * takes.
 */
@ApplicationScoped
class PedigreeRows {
    private static final int ROWS_AT_ONCE = 5000;

    // the candidates of a sire come as "id probability, …", the likeliest first
    private static final String SOME = """
            select h.seq, a.id, a.number, a.sex, a.born, a.born_earliest, a.born_latest, a.died is null, a.died_earliest,
                a.origin, a.dam_id, a.sire_kind, a.sire_id, a.sire_draw_id, a.fusion, a.second_division,
                a.collection_id, a.owner_collection_id, a.same_as_id,
                case when a.twin_kind = 'identical' then a.twin_of_id end, greatest(a.parentage_seq, a.twin_seq),
                case when a.sire_kind = 'candidates' then (
                    select string_agg(s.sire_id || ' ' || s.probability, ',' order by s.probability desc, s.sire_id)
                    from demebook.candidate_sire s
                    where s.population_id = a.population_id and s.animal_id = a.id)
                end,
                a.sire_doubtful
            from demebook.journal_head h
            left join demebook.animal a on a.population_id = h.population_id%s
            where h.population_id = ?
            order by a.node_code, a.serial
            """;

    private static final String ALL = SOME.formatted("");

    // every revision is above 0: said so that the index on it may be taken
    private static final String CHANGED = SOME.formatted(" and a.revision > 0 and a.revision > ?");

    private static final String OF_IDS = SOME.formatted(" and a.id = any (?)");

    @Inject
    DataSource database;

    /** To be called in a transaction: without one the driver would hold all rows at once. */
    @WholeRegister
    long eachOf(UUID populationId, Consumer<PedigreeRow> consumer) {
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(ALL)) {
            query.setObject(1, populationId);
            return each(query, consumer);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Those that an entry after this one touched. */
    @WholeRegister
    long changedSince(UUID populationId, long seq, Consumer<PedigreeRow> consumer) {
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(CHANGED)) {
            query.setLong(1, seq);
            query.setObject(2, populationId);
            return each(query, consumer);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Those with these ids. */
    @WholeRegister
    List<PedigreeRow> of(UUID populationId, Collection<UUID> ids) {
        var rows = new ArrayList<PedigreeRow>();
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(OF_IDS)) {
            query.setArray(1, connection.createArrayOf("uuid", ids.toArray()));
            query.setObject(2, populationId);
            each(query, rows::add);
            return rows;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static long each(PreparedStatement query, Consumer<PedigreeRow> consumer) throws SQLException {
        query.setFetchSize(ROWS_AT_ONCE);
        var shared = new HashMap<Object, Object>();
        long head = 0;
        try (var row = query.executeQuery()) {
            while (row.next()) {
                head = row.getLong(1);
                if (row.getString(3) != null) {
                    consumer.accept(read(row, shared));
                }
            }
        }
        return head;
    }

    // litters share their day of birth and their collection: equal values are held once
    @SuppressWarnings("unchecked")
    private static <T> @Nullable T once(Map<Object, Object> shared, @Nullable T value) {
        return value == null ? null : (T) shared.computeIfAbsent(value, same -> same);
    }

    private static PedigreeRow read(ResultSet row, Map<Object, Object> shared) throws SQLException {
        return new PedigreeRow(
                row.getObject(2, UUID.class),
                row.getString(3),
                Sex.parse(row.getString(4)),
                once(shared, row.getString(5)),
                once(shared, row.getObject(6, LocalDate.class)),
                once(shared, row.getObject(7, LocalDate.class)),
                row.getBoolean(8),
                once(shared, row.getObject(9, LocalDate.class)),
                Origin.parse(row.getString(10)),
                row.getObject(11, UUID.class),
                sire(row),
                once(shared, row.getObject(17, UUID.class)),
                once(shared, row.getObject(18, UUID.class)),
                row.getObject(19, UUID.class),
                row.getObject(20, UUID.class),
                row.getLong(21));
    }

    private static Sire sire(ResultSet row) throws SQLException {
        return switch (row.getString(12)) {
            case "known" -> new Sire.Known(row.getObject(13, UUID.class), row.getBoolean(23));
            case "candidates" -> candidates(row.getString(22), row.getObject(14, UUID.class));
            case "none" ->
                new Sire.None(
                        row.getString(15),
                        row.getBigDecimal(16).stripTrailingZeros().toPlainString());
            default -> new Sire.Unknown();
        };
    }

    private static Sire candidates(String all, @Nullable UUID drawId) {
        var candidates = Arrays.stream(all.split(","))
                .map(candidate -> candidate.split(" "))
                .map(parts -> new Sire.Candidate(UUID.fromString(parts[0]), parts[1]))
                .toList();
        return new Sire.Candidates(candidates, drawId);
    }
}
