package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Subject;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.KnownAnimals.Carrier;
import org.demebook.registry.KnownAnimals.KnownAnimal;
import org.demebook.registry.KnownAnimals.OwnReference;
import org.hibernate.Session;

/** Finds many animals at once: one query for all references, one for all transponders, one for each thousand animals. */
@ApplicationScoped
class BulkLookup {
    private static final int CHUNK = 1000;

    private static final String REFERENCES = """
            select i.collection_id, i.value, a.number
            from demebook.identifier i
            join demebook.animal a on a.population_id = i.population_id and a.id = i.animal_id
            where i.population_id = ? and i.kind = 'own-reference' and i.collection_id = any (?) and i.value = any (?)
            """;
    private static final String CARRIERS = """
            select i.value, a.number, a.id, a.collection_id, a.owner_collection_id
            from demebook.identifier i
            join demebook.animal a on a.population_id = i.population_id and a.id = i.animal_id
            where i.population_id = ? and i.kind = 'transponder' and a.died is null and a.same_as_id is null
            order by i.value, a.number
            """;

    @Inject
    Keepers keepers;

    @Inject
    AnimalViews views;

    @Inject
    AnimalSight sight;

    @Inject
    EntityManager entities;

    KnownAnimals known(
            Standing by, Collection<String> numbers, Collection<String> references, boolean withTransponders) {
        var numberOf = new HashMap<OwnReference, String>();
        var carriers = new HashMap<String, Carrier>();
        var lens = sight.lens(by);
        var own = keepers.collectionIds(by).toArray(UUID[]::new);
        entities.unwrap(Session.class).doWork(connection -> {
            query(
                    connection,
                    REFERENCES,
                    row -> numberOf.put(
                            new OwnReference(row.getObject(1, UUID.class), row.getString(2)), row.getString(3)),
                    by.populationId(),
                    connection.createArrayOf("uuid", own),
                    connection.createArrayOf("text", references.toArray()));
            if (withTransponders) {
                query(
                        connection,
                        CARRIERS,
                        row -> carriers.putIfAbsent(row.getString(1), carrier(lens, row)),
                        by.populationId());
            }
        });
        var wanted = new TreeSet<>(numbers);
        wanted.addAll(numberOf.values());
        return new KnownAnimals(byNumber(by, new ArrayList<>(wanted)), numberOf, carriers);
    }

    private static Carrier carrier(Lens lens, ResultSet row) throws SQLException {
        var subject =
                Subject.of(row.getObject(3, UUID.class), row.getObject(4, UUID.class), row.getObject(5, UUID.class));
        boolean seen = lens.may(subject, FieldGroup.IDENTITY, Action.READ)
                && lens.may(subject, FieldGroup.MARKS_AND_PHOTOS, Action.READ);
        return new Carrier(seen ? row.getString(2) : null);
    }

    private Map<String, KnownAnimal> byNumber(Standing by, List<String> numbers) {
        var known = new HashMap<String, KnownAnimal>();
        for (int from = 0; from < numbers.size(); from += CHUNK) {
            var some = numbers.subList(from, Math.min(from + CHUNK, numbers.size()));
            var animals = sight.seen(by, Animal.numbered(by.populationId(), some));
            var seen = views.of(by, animals);
            for (int i = 0; i < animals.size(); i++) {
                known.put(
                        animals.get(i).number,
                        new KnownAnimal(seen.get(i), animals.get(i).kin()));
                entities.detach(animals.get(i));
            }
        }
        return known;
    }

    private interface Reader {
        void read(ResultSet row) throws SQLException;
    }

    private static void query(Connection connection, String sql, Reader reader, Object... parameters)
            throws SQLException {
        try (var query = connection.prepareStatement(sql)) {
            for (int i = 0; i < parameters.length; i++) {
                query.setObject(i + 1, parameters[i]);
            }
            try (var rows = query.executeQuery()) {
                while (rows.next()) {
                    reader.read(rows);
                }
            }
        }
    }
}
