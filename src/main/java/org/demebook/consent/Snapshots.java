package org.demebook.consent;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.wall.WholeRegister;

/** The grants of populations, and who acts for which collection, kept until something happens in the population. */
@ApplicationScoped
class Snapshots {
    /**
     * A population's grants, whatever became of them, in the order of their ids.
     *
     * @param head the journal had come at least so far when it was read
     * @param collectionsOf by keeper
     */
    record Snapshot(long head, List<Grant> grants, Map<UUID, Set<UUID>> collectionsOf) {}

    private final Cache<UUID, Snapshot> kept =
            Caffeine.newBuilder().maximumSize(200).build();

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    /** As it was at that head, or later. No query while nothing happens in the population. */
    @Transactional
    Snapshot at(UUID populationId, long head) {
        var present = kept.getIfPresent(populationId);
        if (present != null && present.head() >= head) {
            return present;
        }
        // a transaction that has written here itself sees what may yet be undone: that is not kept for others
        var seen = journal.head(populationId);
        var read = new Snapshot(head, grants(populationId), keepers.collectionsByKeeper(populationId));
        if (seen == head) {
            kept.put(populationId, read);
        }
        return read;
    }

    @WholeRegister
    List<Grant> grants(UUID populationId) {
        return GrantRow.ofPopulation(populationId).stream()
                .map(GrantRow::grant)
                .sorted(Comparator.comparing(Grant::id))
                .toList();
    }

    /** As it is now. */
    @Transactional
    Snapshot now(UUID populationId) {
        return at(populationId, journal.head(populationId));
    }
}
