package org.demebook.consent;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.consent.GrantFacts.GrantGiven;
import org.demebook.consent.GrantFacts.GrantWithdrawn;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.jspecify.annotations.Nullable;

/**
 * Grants that follow from what two collections agreed on in another room, which has seen that each of them wants it. They are
 * grants like any other: their keepers find them in their list, with receipts and disclosures, and may withdraw or renew them.
 */
@ApplicationScoped
public class AgreedGrants {
    /** How long two who agreed on a pair may know of each other. */
    public static final int MONTHS_OF_A_PAIR = 12;

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    GrantChecks checks;

    /**
     * Of a collection to single keepers: that they may read something of one animal, from now on.
     *
     * @param givenBy who consented for the collection
     * @param until at most 24 months ahead
     * @return one grant for each keeper, in the order of their ids
     */
    @Transactional(TxType.MANDATORY)
    public List<UUID> give(
            UUID populationId,
            UUID givenBy,
            UUID collectionId,
            UUID animalId,
            Set<UUID> keeperIds,
            List<FieldGroup> fieldGroups,
            Purpose purpose,
            Instant until) {
        var from = checks.now();
        var given = new ArrayList<UUID>();
        for (var keeperId : keeperIds.stream().sorted().toList()) {
            var grant = new GrantGiven(
                    Journal.newId(),
                    collectionId,
                    Recipient.keeper(keeperId),
                    List.of(animalId),
                    fieldGroups,
                    List.of(purpose),
                    List.of(Action.READ),
                    from,
                    until,
                    null,
                    Notice.VERSION,
                    null,
                    null);
            journal.record(populationId, givenBy, grant);
            given.add(grant.grantId());
        }
        return given;
    }

    /**
     * What each side of an agreed pair gives the other: that the keepers of the other collection may read number and custody of the one
     * animal for {@value #MONTHS_OF_A_PAIR} months, to the end of the last day.
     *
     * @param givenBy who consented for the collection
     * @return one grant for each keeper, in the order of their ids
     */
    @Transactional(TxType.MANDATORY)
    public List<UUID> giveForPair(
            UUID populationId, UUID givenBy, UUID collectionId, UUID animalId, UUID otherCollectionId) {
        var until = LocalDate.ofInstant(checks.now(), ZoneOffset.UTC)
                .plusMonths(MONTHS_OF_A_PAIR)
                .plusDays(1)
                .atStartOfDay(ZoneOffset.UTC)
                .toInstant();
        return give(
                populationId,
                givenBy,
                collectionId,
                animalId,
                keepers.keepersOfCollections(populationId).getOrDefault(otherCollectionId, Set.of()),
                List.of(FieldGroup.IDENTITY, FieldGroup.CUSTODY),
                Purpose.PAIRING_COMPUTATION,
                until);
    }

    /** Those of these grants that are live, themselves or as a grant that renews them. One query, and one for each renewal. */
    @Transactional
    public Set<UUID> standing(UUID populationId, Collection<UUID> grantIds) {
        var now = checks.now();
        var standing = new HashSet<UUID>();
        for (var row : GrantRow.withIds(populationId, grantIds)) {
            var last = last(row);
            if (last.grant().state(now) == GrantState.LIVE) {
                standing.add(row.id);
            }
        }
        return standing;
    }

    /** Takes back those of these grants that are live, and what renews them; by a keeper of one of the sides, for both. */
    @Transactional(TxType.MANDATORY)
    public void withdraw(UUID populationId, UUID withdrawnBy, Collection<UUID> grantIds) {
        var now = checks.now();
        for (var row : GrantRow.withIds(populationId, grantIds)) {
            var last = last(row);
            if (last.grant().state(now) == GrantState.LIVE) {
                journal.record(populationId, withdrawnBy, new GrantWithdrawn(last.id));
            }
        }
    }

    private static GrantRow last(GrantRow row) {
        var last = row;
        for (@Nullable GrantRow next = last; next != null; next = GrantRow.renewalOf(last)) {
            last = next;
        }
        return last;
    }
}
