package org.demebook.census;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import org.demebook.census.CountPreparation.Stage;
import org.demebook.problem.Refusal;
import org.demebook.wall.Wall;
import org.jboss.logging.Logger;

/** Counts and releases on a thread of its own, as the request of the coordinator who asked for it would. */
@ApplicationScoped
class CountReleaser {
    private static final Logger LOG = Logger.getLogger(CountReleaser.class);

    @Inject
    Census census;

    @Inject
    Wall wall;

    @ActivateRequestContext
    void release(CountPreparation preparation) {
        var by = preparation.by;
        try {
            wall.asks(by.keeperId());
            preparation.is(Stage.COUNTING);
            var counts = census.count(by, new NewCountRelease(preparation.countedOn()));
            preparation.is(Stage.RELEASING);
            census.release(by, counts);
            preparation.is(Stage.RELEASED);
        } catch (Refusal refusal) {
            preparation.isRefused(refusal.problem());
        } catch (RuntimeException | Error bug) {
            LOG.errorf(bug, "counts of %s for %s", by.populationCode(), preparation.countedOn());
            preparation.is(Stage.FAILED);
        }
    }
}
