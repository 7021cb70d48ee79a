package org.demebook.ancestry;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import org.demebook.consent.Lens;
import org.jboss.logging.Logger;

/**
 * Populations as their askers may see them, kept for who may see the same. First it is looked up what a lens lets see, by
 * the grants that it rests on, then the snapshot of that.
 */
final class SeenSnapshots {
    private static final Logger LOG = Logger.getLogger(SeenSnapshots.class);

    private static final int SIGHTS = 2_000;
    /** About 110 MB. */
    private static final long MOST_ANIMALS = 200_000;

    /** @param whole identity of the snapshot that it is a sight of */
    private record Looked(Object whole, Lens.Basis basis) {}

    private record Seen(Object whole, Sight sight) {}

    private final Cache<Looked, Sight> sights =
            Caffeine.newBuilder().maximumSize(SIGHTS).build();

    private final Cache<Seen, Snapshot> snapshots = Caffeine.newBuilder()
            .maximumWeight(MOST_ANIMALS)
            .weigher((Seen seen, Snapshot snapshot) -> 1 + snapshot.size())
            .build();

    Snapshot of(Snapshot whole, Lens lens) {
        var sight = sights.get(new Looked(whole.identity(), lens.basis()), basis -> Sight.of(whole.records(), lens));
        if (sight.isWhole(whole.size())) {
            return whole;
        }
        return snapshots.get(new Seen(whole.identity(), sight), seen -> {
            long began = System.nanoTime();
            var snapshot = whole.as(sight);
            LOG.debugf("seen of %s: %s in %.2f ms", whole, snapshot, (System.nanoTime() - began) / 1e6);
            return snapshot;
        });
    }
}
