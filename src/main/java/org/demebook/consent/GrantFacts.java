package org.demebook.consent;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of consent. */
@ApplicationScoped
class GrantFacts implements FactBook {
    /**
     * @param animalIds the scope; null for the whole collection
     * @param choice the ready choice that it came with; null when it was written by hand
     * @param renews the grant in whose place it stands; null for one of its own
     */
    record GrantGiven(
            UUID grantId,
            UUID collectionId,
            Recipient recipient,
            @Nullable List<UUID> animalIds,
            List<FieldGroup> fieldGroups,
            List<Purpose> purposes,
            List<Action> actions,
            Instant from,
            Instant until,
            @Words @Nullable String conditions,
            String noticeVersion,
            @Nullable ReadyChoice choice,
            @Nullable UUID renews)
            implements Fact {}

    record GrantWithdrawn(UUID grantId) implements Fact {}

    record GrantSuperseded(UUID grantId) implements Fact {}

    /** The grants that it brings, and those that it ends, are facts of their own. */
    record SharingChosen(UUID collectionId, ReadyChoice choice) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(GrantGiven.class, GrantWithdrawn.class, GrantSuperseded.class, SharingChosen.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof GrantGiven given) {
            if (forgotten.sharedCollections().contains(given.collectionId())) {
                return false;
            }
            GrantRow.of(forgotten.entry().populationId(), given.grantId()).conditions = given.conditions();
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof GrantGiven given) {
            new GrantRow(entry, given).persist();
        } else if (fact instanceof GrantWithdrawn withdrawn) {
            var grant = touched(entry, withdrawn.grantId());
            grant.withdrawnAt = entry.recordedAt();
            grant.withdrawnBy = entry.actorId();
        } else if (fact instanceof GrantSuperseded superseded) {
            touched(entry, superseded.grantId()).supersededAt = entry.recordedAt();
        } else if (fact instanceof SharingChosen chosen) {
            Sharing.chosen(entry, chosen);
        }
    }

    private static GrantRow touched(Entry entry, UUID grantId) {
        var grant = GrantRow.of(entry.populationId(), grantId);
        grant.revision = entry.seq();
        return grant;
    }
}
