package org.demebook.care;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of care tasks. They belong to a collection; who did them is the actor of the entry. */
@ApplicationScoped
class CareFacts implements FactBook {
    /** It was done; said again, the day is corrected. The words stand here since the task itself is derived. */
    record CareTaskDone(
            UUID collectionId,
            String key,
            CareKind kind,
            @Nullable UUID animalId,
            @Nullable UUID litterId,
            LocalDate dueOn,
            @Words(required = true) String what,
            @Words(required = true) String why,
            LocalDate on)
            implements Fact {
        @Override
        public String validFrom() {
            return on.toString();
        }
    }

    /** It was not done after all. */
    record CareCompletionWithdrawn(UUID collectionId, String key) implements Fact {}

    record CareTaskPostponed(UUID collectionId, String key, LocalDate to) implements Fact {}

    /** It is on its own day again. */
    record CarePostponementWithdrawn(UUID collectionId, String key) implements Fact {}

    /**
     * @param animalId null when the task is about none, or the silence about all
     * @param key null when all of the kind are silent
     */
    record CareTaskSilenced(
            UUID silenceId,
            UUID collectionId,
            SilenceScope scope,
            CareKind kind,
            @Nullable UUID animalId,
            @Nullable String key)
            implements Fact {}

    record CareSilenceEnded(UUID silenceId) implements Fact {}

    /** A keeper's own task, once or every so many days after it was done. */
    record OwnTaskAdded(
            UUID taskId,
            UUID collectionId,
            @Nullable UUID animalId,
            @Words(required = true) String what,
            LocalDate dueOn,
            @Nullable Integer everyDays)
            implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                CareTaskDone.class,
                CareCompletionWithdrawn.class,
                CareTaskPostponed.class,
                CarePostponementWithdrawn.class,
                CareTaskSilenced.class,
                CareSilenceEnded.class,
                OwnTaskAdded.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        var populationId = forgotten.entry().populationId();
        if (forgotten.left() instanceof CareTaskDone done) {
            if (forgotten.sharedCollections().contains(done.collectionId())) {
                return false;
            }
            var completion = Completion.of(populationId, done.collectionId(), done.key());
            if (completion != null
                    && Objects.equals(completion.wordsSeq, forgotten.entry().seq())) {
                completion.what = done.what();
                completion.why = done.why();
            }
        } else if (forgotten.left() instanceof OwnTaskAdded added) {
            if (forgotten.sharedCollections().contains(added.collectionId())) {
                return false;
            }
            OwnTask.<OwnTask>findById(new OwnTask.Key(populationId, added.taskId())).what = added.what();
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        var populationId = entry.populationId();
        if (fact instanceof CareTaskDone done) {
            complete(entry, done);
        } else if (fact instanceof CareCompletionWithdrawn withdrawn) {
            var completion =
                    Objects.requireNonNull(Completion.of(populationId, withdrawn.collectionId(), withdrawn.key()));
            OwnTask.notDone(completion);
            completion.delete();
        } else if (fact instanceof CareTaskPostponed postponed) {
            move(populationId, postponed.collectionId(), postponed.key(), postponed.to());
        } else if (fact instanceof CarePostponementWithdrawn withdrawn) {
            move(populationId, withdrawn.collectionId(), withdrawn.key(), null);
        } else if (fact instanceof CareTaskSilenced silenced) {
            new Silence(entry, silenced).persist();
        } else if (fact instanceof CareSilenceEnded ended) {
            Silence.deleteById(new Silence.Key(populationId, ended.silenceId()));
        } else if (fact instanceof OwnTaskAdded added) {
            new OwnTask(entry, added).persist();
        }
    }

    private static void complete(Entry entry, CareTaskDone done) {
        var present = Completion.of(entry.populationId(), done.collectionId(), done.key());
        if (present == null) {
            new Completion(entry, done).persist();
        } else {
            present.doneOn = done.on();
            present.doneBy = entry.actorId();
            present.revision = entry.seq();
        }
        OwnTask.done(entry.populationId(), done.key(), done.on());
    }

    private static void move(UUID populationId, UUID collectionId, String key, @Nullable LocalDate to) {
        var present = Postponement.of(populationId, collectionId, key);
        var postponement = present == null ? new Postponement(populationId, collectionId, key) : present;
        postponement.movedTo = to;
        postponement.timesMoved++;
        postponement.persist();
    }
}
