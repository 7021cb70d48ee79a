package org.demebook.care;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import org.demebook.care.CareFacts.OwnTaskAdded;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A task that a keeper wrote down: once, or again some days after it was done. */
@Entity
@Table(name = "own_care_task")
@IdClass(OwnTask.Key.class)
class OwnTask extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    private static final Pattern TASK_KEY = Pattern.compile("own:([0-9a-f-]{36}):(\\d{1,9})");

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID collectionId;

    @Nullable
    UUID animalId;

    String what;
    LocalDate dueOn;

    @Nullable
    Integer everyDays;

    int occurrence;

    protected OwnTask() {}

    OwnTask(Entry entry, OwnTaskAdded added) {
        this.populationId = entry.populationId();
        this.id = added.taskId();
        this.collectionId = added.collectionId();
        this.animalId = added.animalId();
        this.what = added.what();
        this.dueOn = added.dueOn();
        this.everyDays = added.everyDays();
        this.occurrence = 1;
    }

    static List<OwnTask> in(UUID populationId, Collection<UUID> collectionIds) {
        return list(
                "populationId = ?1 and collectionId in ?2 and (occurrence = 1 or everyDays is not null)",
                populationId,
                collectionIds);
    }

    /** It was done, or the day of its last time is corrected. */
    static void done(UUID populationId, String taskKey, LocalDate on) {
        var key = TASK_KEY.matcher(taskKey);
        if (key.matches()) {
            OwnTask task = findById(new Key(populationId, UUID.fromString(key.group(1))));
            task.occurrence = Math.max(task.occurrence, Integer.parseInt(key.group(2)) + 1);
            if (task.everyDays != null && task.occurrence == Integer.parseInt(key.group(2)) + 1) {
                task.dueOn = on.plusDays(task.everyDays);
            }
        }
    }

    /** The last time was not done after all: it is due as it was. An earlier time changes nothing. */
    static void notDone(Completion completion) {
        var key = TASK_KEY.matcher(completion.key);
        if (key.matches()) {
            OwnTask task = findById(new Key(completion.populationId, UUID.fromString(key.group(1))));
            if (task.occurrence == Integer.parseInt(key.group(2)) + 1) {
                task.occurrence--;
                task.dueOn = completion.dueOn;
            }
        }
    }

    CareTask task() {
        var why =
                everyDays == null ? "Your own task." : "Your own task, %d days after it was done.".formatted(everyDays);
        return new CareTask("own:" + id + ":" + occurrence, CareKind.OWN, animalId, null, dueOn, null, null, what, why);
    }
}
