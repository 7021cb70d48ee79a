package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.UUID;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;

/** Reads a whole population in one statement: no entities, and one state of the register however long it takes. */
@ApplicationScoped
class PedigreeRows {
    private static final int ROWS_AT_ONCE = 5000;

    // the candidates of a sire come as "id probability, …", the likeliest first
    private static final String ALL = """
            select h.seq, a.id, a.number, a.sex, a.born, a.born_earliest, a.born_latest, a.died is null, a.died_earliest,
                a.origin, a.dam_id, a.sire_kind, a.sire_id, a.sire_draw_id, a.fusion, a.second_division,
                a.collection_id, a.owner_collection_id, a.same_as_id,
                case when a.sire_kind = 'candidates' then (
                    select string_agg(s.sire_id || ' ' || s.probability, ',' order by s.probability desc, s.sire_id)
                    from demebook.candidate_sire s
                    where s.population_id = a.population_id and s.animal_id = a.id)
                end
            from demebook.journal_head h
            left join demebook.animal a on a.population_id = h.population_id
            where h.population_id = ?
            order by a.node_code, a.serial
            """;

    @Inject
    DataSource database;

    /** To be called in a transaction: without one the driver would hold all rows at once. */
    long eachOf(UUID populationId, Consumer<PedigreeRow> consumer) {
        try (var connection = database.getConnection();
                var query = connection.prepareStatement(ALL)) {
            query.setFetchSize(ROWS_AT_ONCE);
            query.setObject(1, populationId);
            long head = 0;
            try (var row = query.executeQuery()) {
                while (row.next()) {
                    head = row.getLong(1);
                    if (row.getString(3) != null) {
                        consumer.accept(read(row));
                    }
                }
            }
            return head;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static PedigreeRow read(ResultSet row) throws SQLException {
        return new PedigreeRow(
                row.getObject(2, UUID.class),
                row.getString(3),
                Sex.parse(row.getString(4)),
                row.getString(5),
                row.getObject(6, LocalDate.class),
                row.getObject(7, LocalDate.class),
                row.getBoolean(8),
                row.getObject(9, LocalDate.class),
                Origin.parse(row.getString(10)),
                row.getObject(11, UUID.class),
                sire(row),
                row.getObject(17, UUID.class),
                row.getObject(18, UUID.class),
                row.getObject(19, UUID.class));
    }

    private static Sire sire(ResultSet row) throws SQLException {
        return switch (row.getString(12)) {
            case "known" -> new Sire.Known(row.getObject(13, UUID.class));
            case "candidates" -> candidates(row.getString(20), row.getObject(14, UUID.class));
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
