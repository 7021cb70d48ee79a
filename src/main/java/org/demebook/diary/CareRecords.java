package org.demebook.diary;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.CARE_RECORD_HAS_NO_END;
import static org.demebook.problem.ProblemType.CARE_RECORD_WITHDRAWN;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_CARE_RECORD;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.diary.CareRecord.HealthNote;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.diary.CareRecordFacts.CareRecordCorrected;
import org.demebook.diary.CareRecordFacts.CareRecordEnded;
import org.demebook.diary.CareRecordFacts.CareRecordWithdrawn;
import org.demebook.diary.CareRecordFacts.CareRecorded;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.rest.Page;
import org.demebook.rest.Revision;
import org.demebook.rest.ShownTo;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** The care records of the populations on this node. */
@ApplicationScoped
public class CareRecords {
    /** So many in one batch: a rack. */
    public static final int MOST = 200;

    /** A record that was saved, and what is worth a second look. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    public record Recorded(
            CareRecordView record,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> warnings) {}

    /** Records that were saved together, and what is worth a second look; the field of a finding names its record. */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    public record RecordedBatch(
            List<CareRecordView> records,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> warnings) {}

    @Inject
    Journal journal;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    CareChecks checks;

    @Inject
    EntityManager entities;

    @Inject
    Clock clock;

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Writes down what happened to an animal in the asker's hands. */
    @Transactional
    public Recorded record(Standing by, String number, StatedCareRecord stated) {
        journal.open(by.populationId());
        var breaches = new ArrayList<Breach>();
        var checked = checks.one(by, number, stated, breaches);
        var warnings = Breach.refuse(breaches, null);
        return new Recorded(write(by, checked).get(0), warnings);
    }

    /**
     * Writes down what happened to many animals in the asker's hands: all of it or, telling every breach, nothing. A fixed
     * number of reads for any number of records.
     */
    @Transactional
    public RecordedBatch recordAll(Standing by, List<StatedCareRecord> stated) {
        journal.open(by.populationId());
        var breaches = new ArrayList<Breach>();
        var checked = checks.all(by, stated, breaches);
        var warnings = Breach.refuse(breaches, null);
        return new RecordedBatch(write(by, checked), warnings);
    }

    private List<CareRecordView> write(Standing by, List<CareChecks.Checked> records) {
        var views = new ArrayList<CareRecordView>();
        for (var one : records) {
            var id = Journal.newId();
            var entry = journal.record(
                    by.populationId(),
                    by.keeperId(),
                    new CareRecorded(id, one.animalId(), one.collectionId(), one.record()));
            views.add(CareRecordView.of(id, one.number(), one.record(), true, false, entry.seq()));
        }
        entities.flush();
        return views;
    }

    /** States a record anew, on the revision that was read; by those who act for the collection that it was written for. */
    @Transactional
    public Recorded correct(Standing by, UUID recordId, @Nullable String ifMatch, StatedCareRecord stated) {
        var row = openOwn(by, recordId);
        Revision.require(ifMatch, row.revision);
        requireNotWithdrawn(row);
        var breaches = new ArrayList<Breach>();
        var record = checks.again(by, row, stated, breaches);
        var warnings = Breach.refuse(breaches, null);
        journal.record(
                by.populationId(),
                by.keeperId(),
                new CareRecordCorrected(recordId, record.orElseThrow(), row.revision));
        return new Recorded(view(by, row), warnings);
    }

    /** Takes back what was entered by mistake; a second time changes nothing. */
    @Transactional
    public CareRecordView withdraw(Standing by, UUID recordId) {
        var row = openOwn(by, recordId);
        if (!row.withdrawn) {
            journal.record(by.populationId(), by.keeperId(), new CareRecordWithdrawn(recordId, row.revision));
        }
        return view(by, row);
    }

    /**
     * Takes back what was written last: the records whose last change is one of these entries of the journal. What was corrected
     * or withdrawn since is left as it is.
     *
     * @param until at most {@value #MOST} entries after {@code from}
     */
    @Transactional
    public void withdrawWritten(Standing by, long from, long until) {
        journal.open(by.populationId());
        for (var row : CareRecordRow.written(by.populationId(), keepers.collectionIds(by), span(from, until))) {
            journal.record(by.populationId(), by.keeperId(), new CareRecordWithdrawn(row.id, row.revision));
        }
    }

    /** What a health note is about is over, or a quarantine is; refuses other kinds with CARE_RECORD_HAS_NO_END. */
    @Transactional
    public CareRecordView end(Standing by, UUID recordId, LocalDate on) {
        var row = openOwn(by, recordId);
        requireNotWithdrawn(row);
        if (!(row.record instanceof HealthNote || row.record instanceof Quarantine)) {
            throw new Refusal(
                    CARE_RECORD_HAS_NO_END,
                    "A %s is of one day; only a health note or a quarantine ends.".formatted(row.record.kind()));
        }
        var breaches = new ArrayList<Breach>();
        CareRules.checkEnd(row.record, on, LocalDate.now(clock)).ifPresent(breaches::add);
        Breach.refuse(breaches, null);
        journal.record(by.populationId(), by.keeperId(), new CareRecordEnded(recordId, on));
        return view(by, row);
    }

    private CareRecordRow openOwn(Standing by, UUID recordId) {
        journal.open(by.populationId());
        var own = keepers.collectionIds(by);
        var row = require(by, own, recordId);
        if (!own.contains(row.collectionId)) {
            throw new Refusal(NOT_ALLOWED, "Only who wrote it down may change it; write down what you know yourself.");
        }
        return row;
    }

    private static void requireNotWithdrawn(CareRecordRow row) {
        if (row.withdrawn) {
            throw new Refusal(CARE_RECORD_WITHDRAWN, "It was withdrawn; enter it again.");
        }
    }

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** One record; refuses with NO_SUCH_CARE_RECORD alike when there is none and when it is not for the asker to see. */
    @Transactional
    public CareRecordView get(Standing by, UUID recordId) {
        return view(by, require(by, keepers.collectionIds(by), recordId));
    }

    /**
     * The records of an animal that the asker sees, the latest first.
     *
     * @param kind only those of this kind
     * @param after cursor: day and id of the last one seen
     */
    @Transactional
    public Page<CareRecordView> page(
            Standing by, String number, @Nullable String kind, @Nullable String after, int limit) {
        if (kind != null && !CareRecord.KINDS.contains(kind)) {
            throw new Refusal(
                    BAD_PARAMETER, "kind=%s: it is one of %s.".formatted(kind, String.join(", ", CareRecord.KINDS)));
        }
        var animal = animals.custody(by, number);
        var own = keepers.collectionIds(by);
        var last = after == null ? null : Last.parse(after);
        var rows = CareRecordRow.latest(
                by.populationId(),
                own,
                animal.id(),
                kind,
                last == null ? null : last.on(),
                last == null ? null : last.id(),
                limit + 1);
        return Page.of(
                rows.stream().map(row -> view(row, animal.number(), own)).toList(),
                limit,
                view -> view.day() + " " + view.id());
    }

    private record Last(LocalDate on, UUID id) {
        static Last parse(String after) {
            var parts = after.split(" ");
            try {
                return new Last(LocalDate.parse(parts[0]), Page.id(parts[parts.length - 1]));
            } catch (DateTimeParseException e) {
                throw new Refusal(
                        BAD_PARAMETER,
                        "after is not a cursor of this list; take it from next of the page before, unchanged.");
            }
        }
    }

    /** What {@link #withdrawWritten} would take back, each with what is worth a second look. */
    @Transactional
    public List<Recorded> written(Standing by, long from, long until) {
        var own = keepers.collectionIds(by);
        return checks.lookedAt(by, CareRecordRow.written(by.populationId(), own, span(from, until))).stream()
                .map(looked -> new Recorded(view(looked.row(), looked.number(), own), looked.warnings()))
                .toList();
    }

    private static Span span(long from, long until) {
        return new Span(from, Math.min(until, from + MOST - 1));
    }

    /** Entries of the journal, the last one included. */
    record Span(long from, long until) {}

    /** What the asker sees of one animal; nothing when none of it is theirs. */
    @Transactional
    public Diary diary(Standing by, UUID animalId) {
        return diaries(by, Set.of(animalId)).getOrDefault(animalId, Diary.of());
    }

    /** What the asker sees of animals, by id, in one query; an animal of which they see nothing is left out. */
    @Transactional
    public Map<UUID, Diary> diaries(Standing by, Collection<UUID> animalIds) {
        return checks.diaries(by, keepers.collectionIds(by), animalIds);
    }

    /** The animals of which the asker sees a record of one of these kinds. */
    @Transactional
    public Set<UUID> animalsWith(Standing by, List<String> kinds) {
        return CareRecordRow.animalsWith(by.populationId(), keepers.collectionIds(by), kinds);
    }

    /**
     * A test, and who has a say in it.
     *
     * @param collectionId for which it was written
     */
    public record NotedTest(UUID animalId, UUID collectionId, HealthTest test) {}

    /**
     * All tests of the population, in the order of the samples. Never to be shown, or computed with, without the grants of
     * those for whom they were written. One query.
     */
    @WholeRegister
    @Transactional
    public List<NotedTest> testsOf(UUID populationId) {
        return CareRecordRow.tests(populationId).stream()
                .map(row -> new NotedTest(row.animalId, row.collectionId, (HealthTest) row.record))
                .toList();
    }

    // ── helpers ──────────────────────────────────────────────────────────────────────────────────────────────────────

    private static CareRecordRow require(Standing by, Set<UUID> own, UUID recordId) {
        var row = CareRecordRow.seen(by.populationId(), own, recordId);
        if (row == null || row.withdrawn && !own.contains(row.collectionId)) {
            throw new Refusal(
                    NO_SUCH_CARE_RECORD,
                    "There is no care record %s among those that you may see.".formatted(recordId));
        }
        return row;
    }

    private CareRecordView view(Standing by, CareRecordRow row) {
        return view(row, animals.custody(by.populationId(), row.animalId).number(), keepers.collectionIds(by));
    }

    private static CareRecordView view(CareRecordRow row, String number, Set<UUID> own) {
        return CareRecordView.of(
                row.id, number, row.record, own.contains(row.collectionId), row.withdrawn, row.revision);
    }
}
