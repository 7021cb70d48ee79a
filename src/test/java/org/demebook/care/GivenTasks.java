package org.demebook.care;

import static org.demebook.Backstage.ask;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.demebook.Colony;
import org.demebook.keeper.Standing;

/** A source that gives what tests hand it for their colonies, and nothing for any other. It gives to every member alike. */
@ApplicationScoped
public class GivenTasks implements CareTaskSource {
    private static final Map<UUID, List<CareTask>> GIVEN = new ConcurrentHashMap<>();

    @Override
    public List<CareTask> tasks(Standing by, LocalDate today) {
        return GIVEN.getOrDefault(by.populationId(), List.of());
    }

    /** Gives a task about an animal from now on; returns its key. */
    public static String give(Colony colony, CareKind kind, String number, LocalDate dueOn) {
        return give(colony, kind, number, dueOn, null, null);
    }

    public static String give(
            Colony colony, CareKind kind, String number, LocalDate dueOn, LocalDate fromOn, LocalDate untilOn) {
        var animalId = id("animal", "number", colony, number);
        var key = kind.word() + ":" + animalId + ":" + dueOn;
        add(
                colony,
                new CareTask(
                        key,
                        kind,
                        animalId,
                        null,
                        dueOn,
                        fromOn,
                        untilOn,
                        kind.word().replace('-', ' '),
                        "Since the test says so."));
        return key;
    }

    /** Gives a task about a litter from now on. */
    public static String giveForLitter(Colony colony, CareKind kind, String litterId, LocalDate dueOn) {
        var key = kind.word() + ":" + litterId;
        add(
                colony,
                new CareTask(
                        key,
                        kind,
                        null,
                        UUID.fromString(litterId),
                        dueOn,
                        null,
                        null,
                        "fresh bedding",
                        "It is a week."));
        return key;
    }

    private static void add(Colony colony, CareTask task) {
        GIVEN.computeIfAbsent(id("population", "code", colony, colony.code), id -> new CopyOnWriteArrayList<>())
                .add(task);
    }

    /** The source has no reason for the task any more. */
    public static void takeBack(Colony colony, String key) {
        GIVEN.get(id("population", "code", colony, colony.code))
                .removeIf(task -> task.key().equals(key));
    }

    private static UUID id(String table, String column, Colony colony, String value) {
        var id = table.equals("population") ? "population_id" : "id";
        var query = "select %s from demebook.%s where %s = ? and population_id ="
                + " (select population_id from demebook.population where code = ?)";
        return UUID.fromString(
                ask(query.formatted(id, table, column), value, colony.code).get(0));
    }
}
