package org.demebook.sheet;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.problem.Finding.Level;
import org.jspecify.annotations.Nullable;

/** An import that a keeper started. Not in the journal: it says how the work went, the animals say what came of it. */
@Entity
@Table(name = "import_run")
@IdClass(ImportRun.Key.class)
class ImportRun extends PanacheEntityBase {
    static final String RUNNING = "running";
    static final String DONE = "done";
    static final String REFUSED = "refused";
    static final String INTERRUPTED = "interrupted";

    private static final JsonMapper JSON = JsonMapper.builder().build();

    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID keeperId;
    String state = RUNNING;
    int rowsTotal;
    int rowsDone;
    int animalsAdded;
    int alreadyKnown;
    String findings;
    Instant startedAt;

    @Nullable
    Instant endedAt;

    protected ImportRun() {}

    ImportRun(UUID populationId, UUID id, UUID keeperId, int rowsTotal, Instant startedAt) {
        this.populationId = populationId;
        this.id = id;
        this.keeperId = keeperId;
        this.rowsTotal = rowsTotal;
        this.startedAt = startedAt;
        keep(new Report(rowsTotal, 0, 0, 0, 0, List.of()));
    }

    static @Nullable ImportRun of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    static boolean isRunning(UUID populationId, UUID keeperId) {
        return count("populationId = ?1 and keeperId = ?2 and state = ?3", populationId, keeperId, RUNNING) > 0;
    }

    static List<ImportRun> leftRunning(Instant before) {
        return list("state = ?1 and startedAt < ?2", RUNNING, before);
    }

    void done(Report report, Instant at) {
        end(DONE, report, at);
        rowsDone = rowsTotal;
        animalsAdded = report.wouldAdd();
        alreadyKnown = report.alreadyKnown();
    }

    void refused(Report report, Instant at) {
        end(REFUSED, report, at);
    }

    void interrupted(String why, Instant at) {
        var finding = new SheetFinding(null, null, null, Level.ERROR, why, null, false, null, null);
        end(INTERRUPTED, new Report(rowsTotal, 0, 0, 1, 0, List.of(finding)), at);
    }

    private void end(String how, Report report, Instant at) {
        state = how;
        endedAt = at;
        keep(report);
    }

    private void keep(Report report) {
        try {
            findings = JSON.writeValueAsString(report);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** @param doneSoFar rows done by the work that is going on */
    ImportView view(int doneSoFar) {
        try {
            var report = JSON.readValue(findings, Report.class);
            return new ImportView(
                    id,
                    state,
                    rowsTotal,
                    state.equals(RUNNING) ? doneSoFar : rowsDone,
                    animalsAdded,
                    alreadyKnown,
                    report.errors(),
                    report.warnings(),
                    report.findings(),
                    startedAt,
                    endedAt);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
