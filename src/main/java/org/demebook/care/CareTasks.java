package org.demebook.care;

import static org.demebook.problem.ProblemType.CARE_TASK_DONE;
import static org.demebook.problem.ProblemType.CARE_TASK_FIXED;
import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NO_SUCH_CARE_TASK;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.demebook.care.CareFacts.CareCompletionWithdrawn;
import org.demebook.care.CareFacts.CarePostponementWithdrawn;
import org.demebook.care.CareFacts.CareSilenceEnded;
import org.demebook.care.CareFacts.CareTaskDone;
import org.demebook.care.CareFacts.CareTaskPostponed;
import org.demebook.care.CareFacts.CareTaskSilenced;
import org.demebook.care.CareFacts.OwnTaskAdded;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.jspecify.annotations.Nullable;

/**
 * What the keepers of a collection have to do there, and what they did about it.
 *
 * <p>Every reading asks all sources anew. A change does so too, before it takes the population: what it then writes down
 * holds whatever else happened in between, since it belongs to the collection.
 */
@ApplicationScoped
public class CareTasks {
    /** How far ahead one can look. */
    public static final int MOST_DAYS_AHEAD = 400;

    private static final int DAYS_DONE_ARE_LISTED = 60;
    private static final int USUAL_DAYS_AHEAD = 14;

    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    TaskGathering gathering;

    @Inject
    Clock clock;

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /**
     * The tasks of one state: open and silenced ones by day, overdue ones first; done ones of the last
     * {@value #DAYS_DONE_ARE_LISTED} days, the latest first.
     *
     * @param until the last day that is asked for, at most {@value #MOST_DAYS_AHEAD} ahead; null for two weeks
     * @param after cursor: place of the last one seen
     */
    @Transactional
    public Page<CareTaskView> page(
            Standing by, TaskState state, @Nullable LocalDate until, @Nullable String after, int limit) {
        var today = today();
        var last = until == null ? today.plusDays(USUAL_DAYS_AHEAD) : until;
        if (last.isAfter(today.plusDays(MOST_DAYS_AHEAD))) {
            throw new Refusal(
                    INVALID_VALUES,
                    "until is %s; ask for at most %d days ahead, to %s."
                            .formatted(last, MOST_DAYS_AHEAD, today.plusDays(MOST_DAYS_AHEAD)));
        }
        List<KnownTask> tasks = state == TaskState.DONE
                ? gathering.doneSince(by, today.minusDays(DAYS_DONE_ARE_LISTED))
                : gathering.all(by, today).stream()
                        .filter(task -> task.state() == state && !task.firstOn().isAfter(last))
                        .toList();
        Function<KnownTask, String> place = task -> state == TaskState.DONE ? task.placeAmongDone() : task.place(today);
        var read = tasks.stream()
                .map(task -> Map.entry(place.apply(task), task))
                .filter(task -> after == null || task.getKey().compareTo(after) > 0)
                .sorted(Map.Entry.comparingByKey())
                .limit(limit + 1L)
                .toList();
        var page = Page.of(read, limit, Map.Entry::getKey);
        var views = views(page.items().stream().map(Map.Entry::getValue).toList(), today);
        return new Page<>(views, page.next());
    }

    /** One task; refuses with NO_SUCH_CARE_TASK alike when there is none and when it is not for the asker to see. */
    @Transactional
    public CareTaskView get(Standing by, String key) {
        var today = today();
        return views(require(by, List.of(key), today), today).get(0);
    }

    /** The tasks that are to be done and have a day from the one to the other, by day: for a calendar. */
    @Transactional
    public List<CareTaskView> open(Standing by, LocalDate from, LocalDate until) {
        var today = today();
        var tasks = gathering.all(by, today).stream()
                .filter(task -> task.state() == TaskState.OPEN
                        && !task.firstOn().isAfter(until)
                        && !task.lastOn().isBefore(from))
                .sorted((a, b) -> a.place(LocalDate.MIN).compareTo(b.place(LocalDate.MIN)))
                .toList();
        return views(tasks, today);
    }

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Writes a task of the asker's own down. */
    @Transactional
    public CareTaskView add(Standing by, NewCareTask task) {
        journal.open(by.populationId());
        var animal = task.animal() == null ? null : animals.inHand(by, task.animal());
        if (animal != null && task.collection() != null && !task.collection().equals(animal.collectionId())) {
            throw new Refusal(
                    INVALID_VALUES,
                    "%s lives in another collection than the one that you name; leave the collection out."
                            .formatted(animal.number()),
                    List.of(Finding.error("collection", task.collection(), "is not where the animal lives")));
        }
        var collectionId = animal == null
                ? keepers.collection(by, task.collection()).id()
                : Objects.requireNonNull(animal.collectionId());
        requireNear("dueOn", task.dueOn());
        var added = new OwnTaskAdded(
                Journal.newId(),
                collectionId,
                animal == null ? null : animal.id(),
                task.what().strip(),
                task.dueOn(),
                task.everyDays());
        journal.record(by.populationId(), by.keeperId(), added);
        return get(by, "own:" + added.taskId() + ":1");
    }

    /**
     * Writes down that tasks were done; one that was done on that day already stays as it is. All of them or none: an
     * unknown key refuses the whole, and every unknown one is told.
     *
     * @param on null for today
     */
    @Transactional
    public List<CareTaskView> complete(Standing by, Collection<String> keys, @Nullable LocalDate on) {
        var today = today();
        var day = on == null ? today : on;
        // a day of grace: it may be tomorrow already where the keeper lives
        if (day.isAfter(today.plusDays(1))) {
            throw new Refusal(
                    DATE_IN_FUTURE,
                    "%s has not come yet; a task is done when it is done.".formatted(day),
                    List.of(Finding.error("on", day, "lies in the future")));
        }
        var tasks = require(by, keys, today);
        journal.open(by.populationId());
        var done = new ArrayList<KnownTask>();
        for (var known : tasks) {
            var present = Completion.of(
                    by.populationId(), known.collectionId(), known.task().key());
            if (present == null || !present.doneOn.equals(day)) {
                journal.record(by.populationId(), by.keeperId(), done(known, day));
            }
            done.add(known.done(Completion.of(
                    by.populationId(), known.collectionId(), known.task().key())));
        }
        return views(done, today);
    }

    private static CareTaskDone done(KnownTask known, LocalDate on) {
        var task = known.task();
        return new CareTaskDone(
                known.collectionId(),
                task.key(),
                task.kind(),
                task.animalId(),
                task.litterId(),
                task.dueOn(),
                task.what(),
                task.why(),
                on);
    }

    /** Moves a task to another day; back to its own by {@link #restore}. */
    @Transactional
    public CareTaskView postpone(Standing by, String key, LocalDate to) {
        var today = today();
        var known = require(by, List.of(key), today).get(0);
        if (known.task().kind().isOfABirth()) {
            throw new Refusal(
                    CARE_TASK_FIXED,
                    "\"%s\" follows from what was recorded of the dam and cannot be moved. Correct that, or silence it."
                            .formatted(known.task().what()));
        }
        requireNear("to", to);
        journal.open(by.populationId());
        var completion = Completion.of(by.populationId(), known.collectionId(), key);
        if (completion != null) {
            throw new Refusal(
                    CARE_TASK_DONE,
                    "It was done on %s; take that back before you move it.".formatted(completion.doneOn));
        }
        if (!to.equals(known.dueOn())) {
            journal.record(by.populationId(), by.keeperId(), new CareTaskPostponed(known.collectionId(), key, to));
        }
        var moved = known.moved(Postponement.of(by.populationId(), known.collectionId(), key));
        return views(List.of(moved), today).get(0);
    }

    /** Silences a task, or all of its kind; it is heard of again by {@link #restore}, or by the end of the silence. */
    @Transactional
    public CareTaskView silence(Standing by, String key, SilenceScope scope) {
        var today = today();
        var known = require(by, List.of(key), today).get(0);
        var task = known.task();
        requireFitting(task, scope);
        journal.open(by.populationId());
        if (known.silences().stream().noneMatch(silence -> silence.scope == scope)) {
            journal.record(
                    by.populationId(),
                    by.keeperId(),
                    new CareTaskSilenced(
                            Journal.newId(),
                            known.collectionId(),
                            scope,
                            task.kind(),
                            scope == SilenceScope.KIND ? null : task.animalId(),
                            scope == SilenceScope.TASK ? key : null));
        }
        return views(List.of(known.silenced(covering(by, known))), today).get(0);
    }

    private static void requireFitting(CareTask task, SilenceScope scope) {
        if (scope != SilenceScope.TASK && task.kind() == CareKind.OWN) {
            throw new Refusal(INVALID_VALUES, "Tasks of your own are silenced one by one: scope task.");
        }
        if (scope == SilenceScope.KIND_OF_ANIMAL && task.animalId() == null) {
            throw new Refusal(INVALID_VALUES, "The task is about no single animal: scope task, or kind.");
        }
    }

    /**
     * Takes back what stands between a task and the list: that it was done; else every silence that it lies under; else
     * that it was moved. One where nothing does stays as it is.
     */
    @Transactional
    public CareTaskView restore(Standing by, String key) {
        return restoreAll(by, List.of(key)).get(0);
    }

    /** The same of many: all of them, or none when one is unknown. */
    @Transactional
    public List<CareTaskView> restoreAll(Standing by, Collection<String> keys) {
        var today = today();
        var tasks = require(by, keys, today);
        journal.open(by.populationId());
        return views(tasks.stream().map(known -> restored(by, known)).toList(), today);
    }

    private KnownTask restored(Standing by, KnownTask known) {
        var key = known.task().key();
        var collectionId = known.collectionId();
        var silences = covering(by, known);
        if (Completion.of(by.populationId(), collectionId, key) != null) {
            journal.record(by.populationId(), by.keeperId(), new CareCompletionWithdrawn(collectionId, key));
            return known.done(null);
        } else if (!silences.isEmpty()) {
            for (var silence : silences) {
                journal.record(by.populationId(), by.keeperId(), new CareSilenceEnded(silence.id));
            }
            return known.silenced(List.of());
        } else if (known.movedTo() != null) {
            journal.record(by.populationId(), by.keeperId(), new CarePostponementWithdrawn(collectionId, key));
            return known.moved(Postponement.of(by.populationId(), collectionId, key));
        }
        return known;
    }

    private static List<Silence> covering(Standing by, KnownTask known) {
        return Silence.in(by.populationId(), List.of(known.collectionId())).stream()
                .filter(silence -> silence.covers(known.task(), known.collectionId()))
                .toList();
    }

    /** The tasks with these keys, each once, in the order of the keys. */
    private List<KnownTask> require(Standing by, Collection<String> keys, LocalDate today) {
        var byKey = gathering.all(by, today).stream()
                .collect(Collectors.toMap(known -> known.task().key(), known -> known));
        var found = new ArrayList<KnownTask>();
        var missing = new ArrayList<Finding>();
        for (var key : keys.stream().distinct().toList()) {
            var known = byKey.containsKey(key)
                    ? byKey.get(key)
                    : gathering.done(by, key).orElse(null);
            if (known == null) {
                missing.add(Finding.error("keys", key, "is no task of yours"));
            } else {
                found.add(known);
            }
        }
        if (!missing.isEmpty()) {
            throw new Refusal(
                    NO_SUCH_CARE_TASK,
                    "There is no task %s among yours; it may have vanished with what it came from. Read the list again."
                            .formatted(missing.stream().map(Finding::value).collect(Collectors.joining(", "))),
                    keys.size() == 1 ? List.of() : missing);
        }
        return found;
    }

    private void requireNear(String field, LocalDate day) {
        var today = today();
        if (day.isBefore(today.minusDays(1)) || day.isAfter(today.plusDays(MOST_DAYS_AHEAD))) {
            throw new Refusal(
                    INVALID_VALUES,
                    "%s is not between today, %s, and %s.".formatted(day, today, today.plusDays(MOST_DAYS_AHEAD)),
                    List.of(Finding.error(
                            field, day, "lies in the past or more than %d days ahead".formatted(MOST_DAYS_AHEAD))));
        }
    }

    private List<CareTaskView> views(List<KnownTask> tasks, LocalDate today) {
        var names = keepers.names(tasks.stream()
                .map(KnownTask::completion)
                .filter(Objects::nonNull)
                .map(completion -> completion.doneBy)
                .collect(Collectors.toSet()));
        return tasks.stream().map(task -> task.view(today, names)).toList();
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }
}
