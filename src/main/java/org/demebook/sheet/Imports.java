package org.demebook.sheet;

import static org.demebook.problem.ProblemType.IMPORT_RUNNING;
import static org.demebook.problem.ProblemType.NO_SUCH_IMPORT;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.problem.LeftAsIs;
import org.demebook.problem.Refusal;
import org.demebook.sheet.Importing.Wanted;

/** Sheets that come in. */
@ApplicationScoped
public class Imports {
    @Inject
    Checks checks;

    @Inject
    Importing importing;

    @Inject
    Event<Wanted> wanted;

    @Inject
    Clock clock;

    /**
     * What a sheet would do; changes nothing.
     *
     * @param leave what is left as it is in the whole sheet
     */
    public Report check(Standing by, Sheet sheet, List<LeftAsIs> leave) {
        return checks.check(by, sheet, leave).report();
    }

    /** Starts an import; the work begins when the caller's transaction is committed. Refuses with IMPORT_RUNNING. */
    @Transactional(TxType.MANDATORY)
    public ImportView start(Standing by, Sheet sheet, List<LeftAsIs> leave) {
        if (ImportRun.isRunning(by.populationId(), by.keeperId())) {
            throw new Refusal(
                    IMPORT_RUNNING,
                    "An import of yours into %s is still at work; wait for its end.".formatted(by.populationCode()));
        }
        var run = new ImportRun(
                by.populationId(), Journal.newId(), by.keeperId(), sheet.lines().size(), clock.instant());
        run.persistAndFlush();
        wanted.fire(new Wanted(by, run.id, sheet, leave));
        return run.view(0);
    }

    /** An import that the asker started, as it stands now; refuses with NO_SUCH_IMPORT. */
    @Transactional
    public ImportView get(Standing by, UUID id) {
        var run = ImportRun.of(by.populationId(), id);
        if (run == null || !run.keeperId.equals(by.keeperId())) {
            throw new Refusal(NO_SUCH_IMPORT, "You started no import with the id %s.".formatted(id));
        }
        return run.view(importing.rowsDone(id));
    }
}
