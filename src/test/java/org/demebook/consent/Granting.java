package org.demebook.consent;

import static org.demebook.Backstage.ask;

import io.quarkus.arc.Arc;
import io.quarkus.narayana.jta.QuarkusTransaction;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.demebook.consent.GrantFacts.GrantGiven;
import org.demebook.consent.GrantFacts.GrantWithdrawn;
import org.demebook.journal.Fact;
import org.demebook.journal.Journal;
import org.jspecify.annotations.Nullable;

/** Grants of the keepers of a population under test, as facts of its journal: each is for all collections of one keeper. */
public final class Granting {
    private static final List<FieldGroup> ANCESTRY =
            List.of(FieldGroup.IDENTITY, FieldGroup.PARENTAGE, FieldGroup.GENETICS);

    private final UUID populationId;

    public Granting(String populationCode) {
        populationId =
                UUID.fromString(ask("select population_id from demebook.journal_head where code = ?", populationCode)
                        .get(0));
    }

    /** Animals, ancestry and figures, read and computed with by members, to look at ancestry and to pair animals. */
    public void open(String keeper) {
        give(
                keeper,
                Recipient.MEMBERS,
                null,
                ANCESTRY,
                List.of(Purpose.PEDIGREE_VIEW, Purpose.PAIRING_COMPUTATION),
                List.of(Action.READ, Action.COMPUTE));
    }

    /** The same, computed with alone. */
    public List<UUID> computeOnly(String keeper) {
        return give(
                keeper,
                Recipient.MEMBERS,
                null,
                ANCESTRY,
                List.of(Purpose.PEDIGREE_VIEW, Purpose.PAIRING_COMPUTATION),
                List.of(Action.COMPUTE));
    }

    /** To members, for one purpose. */
    public List<UUID> members(String keeper, Purpose purpose, List<FieldGroup> fieldGroups, Action... actions) {
        return give(keeper, Recipient.MEMBERS, null, fieldGroups, List.of(purpose), Arrays.asList(actions));
    }

    /** @param numbers of animals; null for whole collections */
    public List<UUID> give(
            String keeper,
            Recipient recipient,
            @Nullable List<String> numbers,
            List<FieldGroup> fieldGroups,
            List<Purpose> purposes,
            List<Action> actions) {
        var from = Instant.now().truncatedTo(ChronoUnit.MILLIS).minusSeconds(1);
        var animals =
                numbers == null ? null : numbers.stream().map(this::animal).toList();
        return collections(keeper).stream()
                .map(collection -> {
                    var id = Journal.newId();
                    record(
                            keeper,
                            new GrantGiven(
                                    id,
                                    collection,
                                    recipient,
                                    animals,
                                    fieldGroups,
                                    purposes,
                                    actions,
                                    from,
                                    from.plus(Duration.ofDays(30)),
                                    null,
                                    "1",
                                    null,
                                    null));
                    return id;
                })
                .toList();
    }

    public void withdraw(String keeper, List<UUID> grants) {
        grants.forEach(grant -> record(keeper, new GrantWithdrawn(grant)));
    }

    /** The keeper's own id. */
    public static UUID keeper(String name) {
        return UUID.fromString(
                ask("select id from demebook.keeper where name = ?", name).get(0));
    }

    private UUID animal(String number) {
        return UUID.fromString(
                ask("select id from demebook.animal where population_id = ? and number = ?", populationId, number)
                        .get(0));
    }

    private List<UUID> collections(String keeper) {
        return ask(
                        "select collection_id from demebook.collection_keeper where population_id = ? and keeper_id = ?",
                        populationId,
                        keeper(keeper))
                .stream()
                .map(UUID::fromString)
                .toList();
    }

    private void record(String keeper, Fact fact) {
        var journal = Arc.container().instance(Journal.class).get();
        var keeperId = keeper(keeper);
        QuarkusTransaction.requiringNew().run(() -> {
            journal.open(populationId);
            journal.record(populationId, keeperId, fact);
        });
    }
}
