package org.demebook.consent;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.demebook.consent.GrantFacts.GrantGiven;
import org.demebook.journal.Journal;

/**
 * What a keeper who left had let others see and compute of an animal goes on for its unnamed holder: nobody is left to give or to
 * renew it. Nothing of it may be published.
 */
@ApplicationScoped
public class CarriedGrants {
    /** The same for all, so that no two animals are linked by it. */
    private static final Instant ALWAYS = Instant.EPOCH;

    private static final Instant WITHOUT_END = Instant.parse("9999-12-31T00:00:00Z");

    @Inject
    Journal journal;

    @Inject
    Clock clock;

    /** Live grants of collections. */
    public static final class Live {
        private final List<GrantRow> rows;

        private Live(List<GrantRow> rows) {
            this.rows = rows;
        }
    }

    @Transactional(TxType.MANDATORY)
    public Live live(UUID populationId, Collection<UUID> collectionIds) {
        var now = clock.instant();
        return new Live(
                collectionIds.isEmpty()
                        ? List.of()
                        : GrantRow.ofCollections(populationId, collectionIds).stream()
                                .filter(row -> row.grant().state(now) == GrantState.LIVE)
                                .toList());
    }

    /**
     * Gives for the new holder, or owner, of one animal what the former one had given for it, without conditions. The ids are
     * random: they tell no order.
     */
    @Transactional(TxType.MANDATORY)
    public void carryOver(Live live, UUID populationId, UUID animalId, UUID formerCollectionId, UUID collectionId) {
        for (var row : live.rows) {
            var grant = row.grant();
            var animals = grant.scope().animalIds();
            var actions = grant.actions().stream()
                    .filter(action -> action != Action.PUBLISH_IN_AGGREGATE)
                    .sorted()
                    .toList();
            if (grant.collectionId().equals(formerCollectionId)
                    && (animals == null || animals.contains(animalId))
                    && !actions.isEmpty()) {
                var carried = new GrantGiven(
                        UUID.randomUUID(),
                        collectionId,
                        grant.recipient(),
                        null,
                        grant.fieldGroups().stream().sorted().toList(),
                        grant.purposes().stream().sorted().toList(),
                        actions,
                        ALWAYS,
                        WITHOUT_END,
                        null,
                        row.noticeVersion,
                        null,
                        null);
                // said by nobody but the collection itself
                journal.record(populationId, collectionId, carried);
            }
        }
    }
}
