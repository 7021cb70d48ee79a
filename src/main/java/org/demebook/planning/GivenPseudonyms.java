package org.demebook.planning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** Which partners were proposed under which pseudonyms: one answer for an animal in a calendar month, whoever asks first. */
@ApplicationScoped
class GivenPseudonyms {
    /** Without those that are read as another. */
    private static final String LETTERS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";

    private static final int LENGTH = 10;

    private static final String FIND = """
            select pseudonyms, partner_ids from demebook.unnamed_partners
            where population_id = ? and collection_id = ? and animal_id = ? and month = ?
            """;
    private static final String ADD = """
            insert into demebook.unnamed_partners (population_id, collection_id, animal_id, month, answered_at, pseudonyms,
                partner_ids)
            values (?, ?, ?, ?, ?, ?, ?)
            on conflict do nothing
            """;
    private static final String FORGET = """
            delete from demebook.unnamed_partners where population_id = ? and collection_id = ? and month < ?
            """;

    /**
     * What is asked.
     *
     * @param collectionId that holds the animal
     * @param month its first day
     */
    record Question(UUID populationId, UUID collectionId, UUID animalId, LocalDate month) {}

    private final SecureRandom random = new SecureRandom();

    @Inject
    DataSource database;

    /**
     * The answer that was given first, by pseudonym in their order; or else a new one.
     *
     * @param partners who is proposed if nobody was before
     */
    @WholeRegister
    @Transactional
    TreeMap<String, UUID> get(Question question, Supplier<? extends Collection<UUID>> partners, Instant at) {
        try (var connection = database.getConnection()) {
            var given = find(connection, question);
            if (given == null) {
                forget(connection, question);
                add(connection, question, pseudonymsOf(partners.get()), at);
                given = find(connection, question);
            }
            return given == null ? new TreeMap<>() : given;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private TreeMap<String, UUID> pseudonymsOf(Collection<UUID> partners) {
        var pseudonyms = new TreeMap<String, UUID>();
        // in an order of no meaning, so that not even chance is asked in the order of rank
        for (var partner : new TreeSet<>(partners)) {
            String pseudonym;
            do {
                pseudonym = pseudonym();
            } while (pseudonyms.containsKey(pseudonym));
            pseudonyms.put(pseudonym, partner);
        }
        return pseudonyms;
    }

    String pseudonym() {
        var letters = new StringBuilder();
        for (int i = 0; i < LENGTH; i++) {
            letters.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        }
        return letters.toString();
    }

    private static @Nullable TreeMap<String, UUID> find(Connection connection, Question question) throws SQLException {
        try (var query = connection.prepareStatement(FIND)) {
            query.setObject(1, question.populationId());
            query.setObject(2, question.collectionId());
            query.setObject(3, question.animalId());
            query.setObject(4, question.month());
            try (var row = query.executeQuery()) {
                if (!row.next()) {
                    return null;
                }
                var pseudonyms = (String[]) row.getArray(1).getArray();
                var partners = (UUID[]) row.getArray(2).getArray();
                var given = new TreeMap<String, UUID>();
                for (int i = 0; i < pseudonyms.length; i++) {
                    given.put(pseudonyms[i], partners[i]);
                }
                return given;
            }
        }
    }

    private static void add(Connection connection, Question question, Map<String, UUID> pseudonyms, Instant at)
            throws SQLException {
        try (var add = connection.prepareStatement(ADD)) {
            add.setObject(1, question.populationId());
            add.setObject(2, question.collectionId());
            add.setObject(3, question.animalId());
            add.setObject(4, question.month());
            add.setObject(5, at.atOffset(ZoneOffset.UTC));
            add.setArray(6, connection.createArrayOf("text", pseudonyms.keySet().toArray()));
            add.setArray(7, connection.createArrayOf("uuid", pseudonyms.values().toArray()));
            add.executeUpdate();
        }
    }

    private static void forget(Connection connection, Question question) throws SQLException {
        try (var forget = connection.prepareStatement(FORGET)) {
            forget.setObject(1, question.populationId());
            forget.setObject(2, question.collectionId());
            forget.setObject(3, question.month());
            forget.executeUpdate();
        }
    }
}
