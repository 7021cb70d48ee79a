package org.demebook.rearing;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Subject;
import org.demebook.diary.CareRecord;
import org.demebook.diary.CareRecord.HealthTest.Result;
import org.demebook.diary.CareRecords;
import org.demebook.diary.CareRecords.NotedTest;
import org.demebook.diary.Diary;
import org.demebook.keeper.Standing;
import org.jspecify.annotations.Nullable;

/**
 * Whether the tests that were written down of animals count on the day of a pairing. No veterinary advice: what a result means
 * for an animal, a reptile veterinarian says.
 */
@ApplicationScoped
public class TestsBeforePairing {
    /**
     * An animal that is to be paired.
     *
     * @param subject as consent has it
     * @param yours it lives with the asker
     */
    public record Candidate(Subject subject, boolean yours) {}

    /**
     * How the tests of an animal stand.
     *
     * @param inTheWay for its own keeper alone: what is missing, has run out, or was not negative; null where all count
     */
    public record TestsOnADay(@Nullable String inTheWay) {
        public boolean inDate() {
            return inTheWay == null;
        }
    }

    private static final int POPULATIONS_IN_MEMORY = 16;

    @Inject
    CareRecords careRecords;

    /** A population as its journal left it at one entry, or later. */
    private record At(UUID populationId, long head) {}

    /** By animal; kept, since nothing but an entry changes them. */
    private final Cache<At, Map<UUID, List<NotedTest>>> noted =
            Caffeine.newBuilder().maximumSize(POPULATIONS_IN_MEMORY).build();

    /**
     * By id; of an animal that nobody wrote a test of there is nothing, unless the population asks for one, nor of one that
     * is not the asker's and whose keepers do not let its health be computed with for the lens's purpose. A record of an
     * earlier keeper counts for others as far as that keeper grants it too. One query where something
     * was written down since.
     *
     * @param agents that have to be tested for; with none, the latest test for each agent that an animal was tested for counts
     */
    public Map<UUID, TestsOnADay> of(
            Standing by, Lens lens, Collection<Candidate> animals, LocalDate day, List<String> agents) {
        var byAnimal =
                noted.get(new At(by.populationId(), by.head()), at -> careRecords.testsOf(at.populationId).stream()
                        .collect(Collectors.groupingBy(NotedTest::animalId)));
        var standing = new HashMap<UUID, TestsOnADay>();
        for (var animal : animals) {
            if (!animal.yours() && !mayCompute(lens, animal.subject())) {
                continue;
            }
            var id = animal.subject().animalId();
            var tests = new ArrayList<CountedTest>(CountedTest.of(
                    new Diary(byAnimal.getOrDefault(id, List.of()).stream()
                            .filter(noted -> animal.yours() || mayCompute(lens, writtenBy(noted)))
                            .map(NotedTest::test)
                            .map(test -> (CareRecord) test)
                            .toList()),
                    day));
            if (!tests.isEmpty() || !agents.isEmpty()) {
                standing.put(id, new TestsOnADay(inTheWay(tests, day, agents)));
            }
        }
        return standing;
    }

    private static boolean mayCompute(Lens lens, Subject subject) {
        return lens.may(subject, FieldGroup.HEALTH, Action.COMPUTE);
    }

    private static Subject writtenBy(NotedTest noted) {
        return new Subject(noted.animalId(), Set.of(noted.collectionId()));
    }

    private static @Nullable String inTheWay(List<CountedTest> tests, LocalDate day, List<String> agents) {
        var latest = new LinkedHashMap<String, CountedTest>();
        tests.forEach(test -> latest.put(CountedTest.key(test.agent()), test));
        var words = new ArrayList<String>();
        for (var agent : agents) {
            if (!latest.containsKey(CountedTest.key(agent))) {
                words.add("no test for %s is written down: have it tested, or write the test down".formatted(agent));
            }
        }
        var needed = agents.stream().map(CountedTest::key).toList();
        latest.forEach((agent, test) -> {
            if (needed.isEmpty() || needed.contains(agent)) {
                inTheWay(test, day, words);
            }
        });
        return words.isEmpty() ? null : String.join("; ", words);
    }

    private static void inTheWay(CountedTest test, LocalDate day, List<String> words) {
        if (test.result() == Result.POSITIVE) {
            words.add("the last test for %s, of %s, was positive: ask a reptile veterinarian before it is paired"
                    .formatted(test.agent(), test.sampledOn()));
        } else if (test.result() == Result.UNCLEAR) {
            words.add("the last test for %s, of %s, was unclear: test again, and ask a reptile veterinarian"
                    .formatted(test.agent(), test.sampledOn()));
        } else if (!test.counts()) {
            words.add("the last test for %s, of %s, counts until %s, and the pairing is on %s: test again"
                    .formatted(test.agent(), test.sampledOn(), test.countsUntil(), day));
        }
    }
}
