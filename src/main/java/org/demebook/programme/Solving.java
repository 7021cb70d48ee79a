package org.demebook.programme;

import static org.demebook.problem.ProblemType.UNAVAILABLE;

import io.quarkus.runtime.ShutdownEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.demebook.problem.Refusal;
import org.jboss.logging.Logger;

/** The work of drafts, one after the other on a thread that leaves the others their processors. */
@ApplicationScoped
class Solving {
    private static final Logger LOG = Logger.getLogger(Solving.class);

    private final ExecutorService worker = Executors.newSingleThreadExecutor(work -> {
        var thread = new Thread(work, "season");
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        return thread;
    });

    void stopped(@Observes ShutdownEvent event) {
        worker.shutdownNow();
    }

    void begin(Draft draft) {
        worker.execute(() -> work(draft));
    }

    /** The same for what somebody waits for: it takes its turn, so that one keeper's question does not take all processors. */
    <T> T compute(Callable<T> work) {
        try {
            return worker.submit(work).get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Refusal(UNAVAILABLE, "The server is being stopped; ask again.");
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException failed ? failed : new IllegalStateException(e.getCause());
        }
    }

    private static void work(Draft draft) {
        try {
            if (!draft.goesOn()) {
                draft.ends(List.of());
                return;
            }
            draft.begins();
            var stage = draft.stage;
            var contradiction = Composition.compute(
                    stage.season(),
                    stage.living(),
                    draft.effort,
                    PlanDocument.Work.of(draft.effort, draft.asked)
                            .youngToKeep(stage.season().females()),
                    draft,
                    composition -> draft.found(stage.document(draft.id, draft.effort, composition)));
            draft.ends(stage.words(contradiction));
        } catch (IllegalArgumentException noSuchTotal) {
            if (draft.asked.youngInAll() == null) {
                LOG.errorf(noSuchTotal, "season draft %s", draft.id);
                draft.fails();
                return;
            }
            draft.ends(List.of(
                    "%d young in all, with no more than %d of a litter, cannot be had of the litters that are possible."
                            .formatted(draft.asked.youngInAll(), draft.asked.young())));
        } catch (RuntimeException | Error bug) {
            LOG.errorf(bug, "season draft %s", draft.id);
            draft.fails();
        }
    }
}
