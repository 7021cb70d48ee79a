package org.demebook.sheet;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.problem.LeftAsIs;
import org.demebook.registry.Animals;
import org.demebook.registry.LeftFindings;
import org.demebook.wall.Wall;
import org.jboss.logging.Logger;

/**
 * The work of imports, one after the other on a thread of its own. What an import records and that it is done stand in
 * one transaction: a server that dies on the way leaves a run that says {@code running} and no animal, and the next start
 * says so.
 */
@ApplicationScoped
class Importing {
    /** An import whose run is stored. */
    record Wanted(Standing by, UUID runId, Sheet sheet, List<LeftAsIs> leave) {}

    private static final Logger LOG = Logger.getLogger(Importing.class);
    private static final Duration LONGEST = Duration.ofMinutes(30);

    private final ExecutorService worker = Executors.newSingleThreadExecutor(work -> {
        var thread = new Thread(work, "import");
        thread.setDaemon(true);
        return thread;
    });
    private final Map<UUID, Integer> rowsDone = new ConcurrentHashMap<>();

    @Inject
    Checks checks;

    @Inject
    Animals animals;

    @Inject
    LeftFindings leftFindings;

    @Inject
    Journal journal;

    @Inject
    Clock clock;

    @Inject
    Wall wall;

    void started(@Observes StartupEvent event) {
        tellInterrupted(clock.instant());
    }

    /** Ends the runs that no longer run: those begun before this server was started. */
    void tellInterrupted(Instant startOfServer) {
        QuarkusTransaction.requiringNew().run(() -> {
            wall.openForWriting();
            ImportRun.leftRunning(startOfServer)
                    .forEach(run -> run.interrupted(
                            "The server was stopped while it imported. Nothing was imported; send the file again.",
                            clock.instant()));
        });
    }

    void stopped(@Observes ShutdownEvent event) {
        worker.shutdownNow();
    }

    void wanted(@Observes(during = TransactionPhase.AFTER_SUCCESS) Wanted wanted) {
        rowsDone.put(wanted.runId(), 0);
        worker.execute(() -> work(wanted));
    }

    int rowsDone(UUID runId) {
        return rowsDone.getOrDefault(runId, 0);
    }

    private void work(Wanted wanted) {
        try {
            var plan = checks.check(wanted.by(), wanted.sheet(), wanted.leave());
            if (plan.report().isRefused()) {
                end(wanted, run -> run.refused(plan.report(), clock.instant()));
            } else {
                QuarkusTransaction.requiringNew()
                        .timeout((int) LONGEST.toSeconds())
                        .run(() -> record(wanted, plan));
            }
        } catch (RuntimeException | Error bug) {
            LOG.errorf(bug, "import %s", wanted.runId());
            end(
                    wanted,
                    run -> run.interrupted(
                            "Something went wrong on the server. Nothing was imported; the log has the cause: tell the one who runs the node.",
                            clock.instant()));
        } finally {
            rowsDone.remove(wanted.runId());
        }
    }

    private void record(Wanted wanted, Plan checked) {
        var by = wanted.by();
        var nothingNew = journal.open(by.populationId()) == by.head();
        var plan = nothingNew ? checked : checks.check(by, wanted.sheet(), wanted.leave());
        if (!plan.report().isRefused()) {
            var kept = plan.keptNumbers();
            var fresh = animals.nextNumbers(by, plan.toAdd().size() - kept.size(), kept);
            int known = plan.report().alreadyKnown();
            animals.recordAll(by, plan.facts(fresh), done -> rowsDone.put(wanted.runId(), known + done));
            for (var left : plan.left()) {
                // what a row calls its parents is not what the register calls them
                var breach = left.breach().withoutValue();
                leftFindings.record(by, LeftFindings.ANIMAL, left.animalId(), List.of(breach), wanted.leave());
            }
        }
        var run = run(wanted);
        if (plan.report().isRefused()) {
            run.refused(plan.report(), clock.instant());
        } else {
            run.done(plan.report(), clock.instant());
        }
    }

    private void end(Wanted wanted, Consumer<ImportRun> how) {
        QuarkusTransaction.requiringNew().run(() -> {
            wall.openForWriting();
            how.accept(run(wanted));
        });
    }

    private static ImportRun run(Wanted wanted) {
        return Objects.requireNonNull(ImportRun.of(wanted.by().populationId(), wanted.runId()));
    }
}
