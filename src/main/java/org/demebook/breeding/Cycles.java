package org.demebook.breeding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.breeding.CycleView.Stage;
import org.demebook.breeding.Histories.History;
import org.demebook.gestation.DueWindow;
import org.demebook.gestation.Interval;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;
import org.demebook.transfer.GravidFemales;
import org.jspecify.annotations.Nullable;

/** How the cycles of females stand, and when their young are due. Derived from records on every question. */
@ApplicationScoped
public class Cycles implements GravidFemales {
    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Populations populations;

    @Inject
    Histories histories;

    @Inject
    RecordRules rules;

    @Inject
    Clock clock;

    /** One cycle with the window that follows from it. */
    record Awaited(UUID femaleId, Cycle cycle, Optional<Sign> best, Optional<DueWindow> due) {}

    /**
     * The cycle of a female in a collection of the asker's.
     *
     * @param on as it looked on that day; null for today
     */
    @Transactional
    public CycleView of(Standing by, String number, @Nullable LocalDate on) {
        var female = animals.held(by, number);
        var day = on == null ? rules.today() : on;
        var population = populations.get(by);
        var history = histories.of(by.populationId(), female.id());
        var awaited = awaited(population, female.id(), history, day, intervals(by.populationId(), population));
        return view(by, population, List.of(awaited), day).get(0);
    }

    /** Every female in the asker's collections whose young are awaited, the most urgent first. */
    @Transactional
    public List<CycleView> awaited(Standing by, @Nullable LocalDate on) {
        var day = on == null ? rules.today() : on;
        var population = populations.get(by);
        return view(by, population, awaited(by, population, day), day);
    }

    @Override
    @Transactional
    public boolean isGravid(UUID populationId, UUID animalId) {
        var mode = populations.get(populationId).birthMode();
        return histories.of(populationId, animalId).cycle(mode, rules.today()).gravid();
    }

    List<Awaited> awaited(Standing by, PopulationView population, LocalDate day) {
        List<UUID> females = BreedingSign.getEntityManager()
                .createQuery(
                        "select distinct s.femaleId from BreedingSign s, Animal a where s.populationId = :population"
                                + " and s.withdrawn = false and s.happenedOn > :since and a.populationId = :population"
                                + " and a.id = s.femaleId and a.died is null and a.collectionId in :own",
                        UUID.class)
                .setParameter("population", by.populationId())
                .setParameter("since", day.minusDays(Cycle.DAYS))
                .setParameter("own", keepers.collectionIds(by))
                .getResultList();
        var intervals = intervals(by.populationId(), population);
        return histories.of(by.populationId(), females).entrySet().stream()
                .map(entry -> awaited(population, entry.getKey(), entry.getValue(), day, intervals))
                .filter(awaited -> awaited.cycle().state() != Cycle.State.NOTHING_NOTED)
                .sorted(Comparator.comparing(
                                (Awaited awaited) -> awaited.cycle().labour().isEmpty())
                        .thenComparing(awaited ->
                                awaited.due().map(DueWindow::expectedOn).orElse(LocalDate.MAX))
                        .thenComparing(Awaited::femaleId))
                .toList();
    }

    private Map<UUID, List<Interval>> intervals(UUID populationId, PopulationView population) {
        return histories.intervals(populationId, population.birthMode());
    }

    private static Awaited awaited(
            PopulationView population,
            UUID femaleId,
            History history,
            LocalDate day,
            Map<UUID, List<Interval>> intervals) {
        var cycle = history.cycle(population.birthMode(), day);
        var best = cycle.best();
        var own = history.intervals(population.birthMode());
        var others = intervals.entrySet().stream()
                .filter(entry -> !entry.getKey().equals(femaleId))
                .flatMap(entry -> entry.getValue().stream())
                .toList();
        return new Awaited(
                femaleId,
                cycle,
                best,
                best.flatMap(Sign::landmark)
                        .map(sign -> DueWindow.of(
                                sign,
                                population.profile().gestation(),
                                population.name(),
                                before(own, day),
                                before(others, day))));
    }

    /** As it looked on a day, only what was born by then is known. */
    private static List<Interval> before(List<Interval> intervals, LocalDate day) {
        return intervals.stream()
                .filter(interval -> !interval.bornOn().isAfter(day))
                .toList();
    }

    // ── showing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    private List<CycleView> view(Standing by, PopulationView population, List<Awaited> cycles, LocalDate day) {
        var shown = cycles.stream()
                .flatMap(awaited -> awaited.cycle().signs().stream())
                .map(Sign::id)
                .toList();
        List<BreedingSign> rows = shown.isEmpty()
                ? List.of()
                : BreedingSign.list("populationId = ?1 and id in ?2", by.populationId(), shown);
        var rowsById = rows.stream().collect(Collectors.toMap(row -> row.id, row -> row));
        var ids = new HashSet<UUID>();
        cycles.forEach(awaited -> ids.add(awaited.femaleId()));
        rows.stream().filter(row -> row.maleId != null).forEach(row -> ids.add(row.maleId));
        var numbers = animals.numbers(by.populationId(), ids);
        return cycles.stream()
                .map(awaited -> view(
                        by,
                        population,
                        awaited,
                        day,
                        numbers.get(awaited.femaleId()),
                        awaited.cycle().signs().stream()
                                .map(sign -> rowsById.get(sign.id()).view(numbers))
                                .toList()))
                .toList();
    }

    private CycleView view(
            Standing by,
            PopulationView population,
            Awaited awaited,
            LocalDate day,
            String number,
            List<BreedingSignView> signs) {
        var words = new CycleWords(population.profile().gestation(), awaited, day);
        var pairing = awaited.cycle().state() == Cycle.State.NOTHING_NOTED
                ? CycleWords.Pairing.of(
                        histories.meetings(by.populationId(), awaited.femaleId(), day), awaited.cycle(), day)
                : Optional.<CycleWords.Pairing>empty();
        return new CycleView(
                number,
                day,
                stage(awaited, pairing.isPresent()),
                awaited.cycle().gravid(),
                signs,
                words.due(),
                pairing.map(CycleWords.Pairing::months).orElse(null),
                pairing.map(CycleWords.Pairing::reason).orElseGet(words::reason),
                words.prompts(clock.instant()));
    }

    private static Stage stage(Awaited awaited, boolean paired) {
        return switch (awaited.cycle().state()) {
            case NOTHING_NOTED -> paired ? Stage.INTRODUCED : Stage.NOTHING_NOTED;
            case GRAVID -> Stage.GRAVID;
            case LAID -> Stage.LAID;
            case IN_LABOUR -> Stage.IN_LABOUR;
            case LABOUR_FINISHED -> Stage.LABOUR_FINISHED;
        };
    }
}
