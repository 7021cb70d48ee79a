package org.demebook.census;

import static org.demebook.problem.ProblemType.NO_SUCH_RELEASE;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.quarkus.runtime.ShutdownEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;

/**
 * Releases of counts that are made behind the answer, one after the other, for who would else wait for a minute. What became of one is
 * in the memory of this server for two hours; what was released stays. One that the server's end interrupts has released nothing.
 */
@ApplicationScoped
public class CountPreparations {
    private static final Duration KEPT = Duration.ofHours(2);

    @Inject
    Census census;

    @Inject
    CountReleaser releaser;

    @Inject
    Clock clock;

    private final Cache<UUID, CountPreparation> preparations =
            Caffeine.newBuilder().expireAfterAccess(KEPT).build();

    private final ExecutorService worker = Executors.newSingleThreadExecutor(work -> {
        var thread = new Thread(work, "counts");
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        return thread;
    });

    void stopped(@Observes ShutdownEvent event) {
        worker.shutdownNow();
    }

    /**
     * Begins to prepare a release. While one of the coordinator's is on its way for the population it is that one that is answered.
     * Refuses at once with NOT_ALLOWED, DATE_IN_FUTURE and DAY_COUNTED_ALREADY.
     */
    public CountPreparation start(Standing by, NewCountRelease asked) {
        var day = census.countable(by, asked);
        synchronized (preparations) {
            var atWork = preparations.asMap().values().stream()
                    .filter(one -> isOf(one, by) && !one.stage().isOver())
                    .findFirst();
            return atWork.orElseGet(() -> {
                var preparation = new CountPreparation(Journal.newId(), by, day, clock.instant());
                preparations.put(preparation.id(), preparation);
                worker.execute(() -> releaser.release(preparation));
                return preparation;
            });
        }
    }

    /** How far it is; refuses all but who asked for it with NO_SUCH_RELEASE. */
    public CountPreparation get(Standing by, UUID id) {
        Keepers.requireCoordinator(by);
        var preparation = preparations.getIfPresent(id);
        if (preparation == null || !isOf(preparation, by)) {
            throw new Refusal(
                    NO_SUCH_RELEASE,
                    "No release of yours is prepared under %s. How one goes is kept for two hours; look whether the counts were published."
                            .formatted(id));
        }
        return preparation;
    }

    private static boolean isOf(CountPreparation preparation, Standing by) {
        return preparation.by.keeperId().equals(by.keeperId())
                && preparation.by.populationId().equals(by.populationId());
    }
}
