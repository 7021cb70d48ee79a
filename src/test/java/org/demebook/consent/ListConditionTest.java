package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.WREN;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.wall.Wall;
import org.junit.jupiter.api.Test;

/** The rule, the lens and the condition of a query decide alike: on random grants, animals and askers, on PostgreSQL. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ListConditionTest {
    private static final long SEED = 20261128;
    private static final int ROUNDS = 50;
    private static final int QUESTIONS = 20;

    @Inject
    EntityManager entities;

    @Inject
    Wall wall;

    @Test
    void the_database_finds_exactly_the_animals_that_the_rule_allows() {
        var world = settled(SEED);
        int cases = 0;
        int allowed = 0;
        for (int round = 0; round < ROUNDS; round++) {
            var grants = world.grants(30);
            give(world, grants);
            for (int question = 0; question < QUESTIONS; question++) {
                var audience = world.audience();
                var purpose = world.one(List.of(Purpose.values()));
                var fieldGroup = world.one(List.of(FieldGroup.values()));
                var action = world.one(List.of(Action.values()));
                // the very moment at which grants begin and end, too
                var at = RandomWorld.NOW.plus(Duration.ofDays(world.random.nextInt(5) - 2));
                var lens = new Lens(audience, purpose, at, grants);
                var expected = new HashSet<UUID>();
                for (var animal : world.animals) {
                    var decision = Consents.decide(audience, purpose, animal.subject(), fieldGroup, action, at, grants);
                    assertThat(lens.may(animal.subject(), fieldGroup, action))
                            .as("seed %d, round %d, question %d, %s", SEED, round, question, animal)
                            .isEqualTo(decision.allowed());
                    if (decision.allowed()) {
                        expected.add(animal.id());
                    }
                }
                var condition = Consents.condition(audience, purpose, fieldGroup, action, at);
                assertThat(bySql(world, condition))
                        .as("SQL; seed %d, round %d, question %d: %s", SEED, round, question, audience)
                        .isEqualTo(expected);
                assertThat(byJpql(world, condition))
                        .as("JPQL; seed %d, round %d, question %d: %s", SEED, round, question, audience)
                        .isEqualTo(expected);
                var rest = world.animals.stream()
                        .map(RandomWorld.Held::id)
                        .filter(id -> !expected.contains(id))
                        .collect(Collectors.toSet());
                assertThat(withoutByJpql(world, condition))
                        .as("the rest; seed %d, round %d, question %d", SEED, round, question)
                        .isEqualTo(rest);
                cases += world.animals.size();
                allowed += expected.size();
            }
        }
        assertThat(cases).isGreaterThan(30_000);
        // neither answer is rare
        assertThat(allowed).isBetween(cases / 10, cases * 9 / 10);
    }

    @Test
    void a_record_is_shown_by_the_collection_that_wrote_it() {
        var world = settled(SEED + 1);
        var grants = world.grants(40);
        give(world, grants);
        for (int question = 0; question < 100; question++) {
            var audience = world.audience();
            var purpose = world.one(List.of(Purpose.values()));
            var condition = Consents.condition(audience, purpose, FieldGroup.HEALTH, Action.READ, RandomWorld.NOW);
            var expected = new HashSet<UUID>();
            for (var animal : world.animals) {
                if (animal.owner() != null
                        && Consents.decide(
                                        audience,
                                        purpose,
                                        new Subject(animal.id(), Set.of(animal.owner())),
                                        FieldGroup.HEALTH,
                                        Action.READ,
                                        RandomWorld.NOW,
                                        grants)
                                .allowed()) {
                    expected.add(animal.id());
                }
            }
            assertThat(byJpql(world, condition, condition.jpql("a.ownerCollectionId", "a.id")))
                    .isEqualTo(expected);
            assertThat(bySql(world, condition, condition.sql("a.owner_collection_id", "a.id")))
                    .isEqualTo(expected);
        }
    }

    private Set<UUID> bySql(RandomWorld world, ListCondition condition) {
        return bySql(world, condition, condition.sql("a.collection_id", "a.owner_collection_id", "a.id"));
    }

    @SuppressWarnings("unchecked")
    private Set<UUID> bySql(RandomWorld world, ListCondition condition, String where) {
        var query = entities.createNativeQuery(
                        "select a.id from demebook.animal a where a.population_id = :population and a.serial >= 1000 and "
                                + where,
                        UUID.class)
                .setParameter("population", world.population);
        condition.parameters().forEach(query::setParameter);
        return new HashSet<UUID>(behindTheWall(query::getResultList));
    }

    private Set<UUID> byJpql(RandomWorld world, ListCondition condition) {
        return byJpql(world, condition, condition.jpql("a.collectionId", "a.ownerCollectionId", "a.id"));
    }

    private Set<UUID> withoutByJpql(RandomWorld world, ListCondition condition) {
        return byJpql(world, condition, "not " + condition.jpql("a.collectionId", "a.ownerCollectionId", "a.id"));
    }

    private Set<UUID> byJpql(RandomWorld world, ListCondition condition, String where) {
        var query = entities.createQuery(
                        "select a.id from Animal a where a.populationId = :population and a.serial >= 1000 and "
                                + where,
                        UUID.class)
                .setParameter("population", world.population);
        condition.parameters().forEach(query::setParameter);
        return new HashSet<>(behindTheWall(query::getResultList));
    }

    /** The condition alone, without the wall behind it. */
    private <T> T behindTheWall(Supplier<T> query) {
        return QuarkusTransaction.requiringNew().call(() -> {
            wall.openForWriting();
            return query.get();
        });
    }

    /** A random world whose collections and animals stand in the database. */
    private static RandomWorld settled(long seed) {
        var colony = Colony.foundPrivate();
        var population =
                UUID.fromString(ask("select population_id from demebook.population where code = ?", colony.code)
                        .get(0));
        var world = new RandomWorld(seed, population);
        for (var collection : world.collections) {
            change("insert into demebook.collection values (?, ?, 'racks')", population, collection);
        }
        // those that no collection holds are with somebody who does not take part
        var handedOut = Map.of("animal", colony.female(WREN), "kind", "sale", "withClaimCode", true);
        String transfer = colony.post(WREN, "/transfers", handedOut)
                .statusCode(201)
                .extract()
                .path("transfer.id");
        int serial = 1000;
        for (var animal : world.animals) {
            change(
                    "insert into demebook.animal (population_id, id, number, node_code, serial, sex, origin, sire_kind,"
                            + " malformed, collection_id, transfer_id, owner_collection_id, registered_by, parentage_seq,"
                            + " sex_seq, description_seq, revision) values (?, ?, ?, 'H', ?, 'unknown', 'unknown',"
                            + " 'unknown', false, ?, ?, ?, ?, 0, 0, 0, 0)",
                    population,
                    animal.id(),
                    "X" + serial,
                    serial++,
                    animal.holder(),
                    animal.holder() == null ? UUID.fromString(transfer) : null,
                    animal.owner(),
                    world.keepers.get(0));
        }
        return world;
    }

    private void give(RandomWorld world, List<Grant> grants) {
        QuarkusTransaction.requiringNew().run(() -> {
            wall.openForWriting();
            GrantRow.delete("populationId", world.population);
            grants.forEach(grant -> GrantRow.persist(row(world.population, grant)));
        });
    }

    private static GrantRow row(UUID population, Grant grant) {
        var row = new GrantRow();
        row.populationId = population;
        row.id = grant.id();
        row.collectionId = grant.collectionId();
        row.givenBy = grant.givenBy();
        row.givenAt = grant.from();
        row.recipient = grant.recipient().kind().word();
        row.recipientKeeper = grant.recipient().keeperId();
        row.recipientNode = grant.recipient().node();
        row.animalIds = grant.scope().animalIds() == null
                ? null
                : grant.scope().animalIds().toArray(UUID[]::new);
        row.fieldGroups = grant.fieldGroups().stream().map(FieldGroup::word).toArray(String[]::new);
        row.purposes = grant.purposes().stream().map(Purpose::word).toArray(String[]::new);
        row.actions = grant.actions().stream().map(Action::word).toArray(String[]::new);
        row.fromAt = grant.from();
        row.untilAt = grant.until();
        row.noticeVersion = grant.noticeVersion();
        row.withdrawnAt = grant.withdrawnAt();
        row.withdrawnBy = grant.withdrawnAt() == null ? null : grant.givenBy();
        row.supersededAt = grant.supersededAt();
        assertThat(row.grant()).isEqualTo(grant);
        return row;
    }
}
