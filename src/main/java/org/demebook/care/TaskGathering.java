package org.demebook.care;

import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;
import org.jspecify.annotations.Nullable;

/**
 * Brings together what the sources give, the keepers' own tasks, and what was done about them. A task is of the collection
 * in which its animal lives; a task about a litter, of the one in which its young live.
 */
@ApplicationScoped
class TaskGathering {
    private static final int CHUNK = 1000;

    private static final String LIVING = """
            select a.id, a.number, a.collectionId, a.litterId from Animal a
            where a.populationId = :population and a.collectionId in :own and a.died is null and a.sameAsId is null
            and (a.id in :animals or a.litterId in :litters)
            order by a.number
            """;

    @Inject
    @All
    List<CareTaskSource> sources;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    EntityManager entities;

    record Living(
            UUID id,
            String number,
            UUID collectionId,
            @Nullable UUID litterId) {}

    /** Everything there is to do for the asker, in no order; what was done or silenced included. */
    List<KnownTask> all(Standing by, LocalDate today) {
        var own = keepers.collectionIds(by);
        if (own.isEmpty()) {
            return List.of();
        }
        var given = new ArrayList<CareTask>();
        sources.forEach(source -> given.addAll(source.tasks(by, today)));
        var written = read(OwnTask.in(by.populationId(), own));
        var living = living(by, own, given, written);
        var tasks = new LinkedHashMap<String, KnownTask>();
        placed(given, own, living).forEach(task -> tasks.putIfAbsent(task.task().key(), task));
        ownTasks(written, living).forEach(task -> tasks.putIfAbsent(task.task().key(), task));
        return withState(by, own, List.copyOf(tasks.values()));
    }

    /** Those that were done on the given day or later, as they were then. */
    List<KnownTask> doneSince(Standing by, LocalDate day) {
        return done(by, completions -> Completion.since(by.populationId(), completions, day));
    }

    /** The one that was done, whether or not its source still gives it. */
    Optional<KnownTask> done(Standing by, String key) {
        return done(by, completions -> Completion.ofKeys(by.populationId(), completions, Set.of(key))).stream()
                .findFirst();
    }

    List<Silence> silences(Standing by) {
        var own = keepers.collectionIds(by);
        return own.isEmpty() ? List.of() : read(Silence.in(by.populationId(), own));
    }

    private List<KnownTask> done(Standing by, Function<Set<UUID>, List<Completion>> wanted) {
        var own = keepers.collectionIds(by);
        if (own.isEmpty()) {
            return List.of();
        }
        var completions = read(wanted.apply(own));
        var numbers = animals.numbers(
                by.populationId(),
                completions.stream()
                        .map(completion -> completion.animalId)
                        .filter(Objects::nonNull)
                        .collect(Collectors.toSet()));
        return completions.stream()
                .map(completion -> new KnownTask(
                        completion.task(),
                        completion.collectionId,
                        completion.animalId == null ? null : numbers.get(completion.animalId),
                        completion,
                        null,
                        List.of()))
                .toList();
    }

    /** The animals that tasks are about, and the young of the litters that they are about. */
    private Map<UUID, Living> living(Standing by, Set<UUID> own, List<CareTask> given, List<OwnTask> written) {
        var about = Stream.concat(
                        given.stream().map(CareTask::animalId), written.stream().map(task -> task.animalId))
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        var litters =
                given.stream().map(CareTask::litterId).filter(Objects::nonNull).collect(Collectors.toSet());
        return entities.createQuery(LIVING, Living.class)
                .setParameter("population", by.populationId())
                .setParameter("own", own)
                .setParameter("animals", about)
                .setParameter("litters", litters)
                .getResultStream()
                .collect(Collectors.toMap(Living::id, animal -> animal, (one, same) -> one, LinkedHashMap::new));
    }

    /** The tasks of the sources whose animals, or young, live in the asker's collections. */
    private static List<KnownTask> placed(List<CareTask> given, Set<UUID> own, Map<UUID, Living> living) {
        var collectionOfLitter = new HashMap<UUID, UUID>();
        living.values().forEach(animal -> collectionOfLitter.putIfAbsent(animal.litterId(), animal.collectionId()));
        var anywhere = own.stream().min(UUID::compareTo).orElseThrow();
        var placed = new ArrayList<KnownTask>();
        for (var task : given) {
            var animal = task.animalId() == null ? null : living.get(task.animalId());
            var collectionId = task.animalId() != null
                    ? animal == null ? null : animal.collectionId()
                    : task.litterId() != null ? collectionOfLitter.get(task.litterId()) : anywhere;
            if (collectionId != null) {
                placed.add(known(task, collectionId, animal));
            }
        }
        return placed;
    }

    private static List<KnownTask> ownTasks(List<OwnTask> written, Map<UUID, Living> living) {
        var tasks = new ArrayList<KnownTask>();
        for (var task : written) {
            var animal = task.animalId == null ? null : living.get(task.animalId);
            if (task.animalId == null || animal != null && animal.collectionId().equals(task.collectionId)) {
                tasks.add(known(task.task(), task.collectionId, animal));
            }
        }
        return tasks;
    }

    private static KnownTask known(CareTask task, UUID collectionId, @Nullable Living animal) {
        return new KnownTask(task, collectionId, animal == null ? null : animal.number(), null, null, List.of());
    }

    private List<KnownTask> withState(Standing by, Set<UUID> own, List<KnownTask> tasks) {
        var silences = read(Silence.in(by.populationId(), own));
        var known = new ArrayList<KnownTask>(tasks.size());
        for (int from = 0; from < tasks.size(); from += CHUNK) {
            var chunk = tasks.subList(from, Math.min(tasks.size(), from + CHUNK));
            var keys = chunk.stream().map(task -> task.task().key()).toList();
            var completions = read(Completion.ofKeys(by.populationId(), own, keys)).stream()
                    .collect(Collectors.toMap(done -> new InCollection(done.collectionId, done.key), done -> done));
            var postponements = read(Postponement.ofKeys(by.populationId(), own, keys)).stream()
                    .collect(
                            Collectors.toMap(moved -> new InCollection(moved.collectionId, moved.key), moved -> moved));
            for (var task : chunk) {
                var here = new InCollection(task.collectionId(), task.task().key());
                known.add(task.done(completions.get(here))
                        .moved(postponements.get(here))
                        .silenced(silences.stream()
                                .filter(silence -> silence.covers(task.task(), task.collectionId()))
                                .toList()));
            }
        }
        return known;
    }

    private record InCollection(UUID collectionId, String key) {}

    // Detached: this is read before the population is locked, and whoever writes under the lock has to read anew.
    private <T> List<T> read(List<T> rows) {
        rows.forEach(entities::detach);
        return rows;
    }
}
