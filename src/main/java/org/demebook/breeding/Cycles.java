package org.demebook.breeding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.breeding.CycleView.Stage;
import org.demebook.breeding.CycleWords.Pairing;
import org.demebook.breeding.Histories.History;
import org.demebook.gestation.DueWindow;
import org.demebook.gestation.Interval;
import org.demebook.gestation.Meeting;
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

    /**
     * One cycle with what follows from it.
     *
     * @param pairing where no sign tells more than that she met a male
     */
    record Awaited(
            UUID femaleId, Cycle cycle, Optional<Sign> best, Optional<DueWindow> due, Optional<Pairing> pairing) {
        private boolean goesOn(LocalDate day) {
            return cycle.state() != Cycle.State.NOTHING_NOTED
                    || pairing.filter(met -> !met.isOver(day)).isPresent();
        }
    }

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
        return view(by, population, awaited(by.populationId(), population, List.of(female.id()), day), day)
                .get(0);
    }

    /**
     * Every female in the asker's collections whose young are awaited: those in labour first, then by the expected day, then
     * those of whom introductions tell no more than months, until the last of these is over.
     */
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
        var females = new HashSet<UUID>();
        females.addAll(females(by, "BreedingSign", "r.happenedOn > :since", day));
        females.addAll(females(by, "Introduction", "(r.untilOn is null or r.untilOn > :since)", day));
        return awaited(by.populationId(), population, females, day).stream()
                .filter(awaited -> awaited.goesOn(day))
                .sorted(Comparator.comparing(
                                (Awaited awaited) -> awaited.cycle().labour().isEmpty())
                        .thenComparing(awaited ->
                                awaited.due().map(DueWindow::expectedOn).orElse(LocalDate.MAX))
                        .thenComparing(awaited -> awaited.pairing()
                                .map(met -> met.months().from())
                                .orElse(""))
                        .thenComparing(Awaited::femaleId))
                .toList();
    }

    /** The living females in the asker's collections of whom something was recorded within a cycle. */
    private List<UUID> females(Standing by, String records, String withinACycle, LocalDate day) {
        return BreedingSign.getEntityManager()
                .createQuery(
                        "select distinct r.femaleId from %s r, Animal a where r.populationId = :population"
                                        .formatted(records)
                                + " and r.withdrawn = false and %s and a.populationId = :population"
                                        .formatted(withinACycle)
                                + " and a.id = r.femaleId and a.died is null and a.collectionId in :own",
                        UUID.class)
                .setParameter("population", by.populationId())
                .setParameter("since", day.minusDays(Cycle.DAYS))
                .setParameter("own", keepers.collectionIds(by))
                .getResultList();
    }

    private List<Awaited> awaited(
            UUID populationId, PopulationView population, Collection<UUID> females, LocalDate day) {
        var intervals = histories.intervals(populationId, population.birthMode());
        var recorded = histories.of(populationId, females);
        var meetings = histories.meetings(populationId, females, day);
        return females.stream()
                .map(female -> awaited(
                        population,
                        female,
                        recorded.getOrDefault(female, History.EMPTY),
                        meetings.getOrDefault(female, List.of()),
                        day,
                        intervals))
                .toList();
    }

    private static Awaited awaited(
            PopulationView population,
            UUID femaleId,
            History history,
            List<Meeting> meetings,
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
                                before(others, day))),
                cycle.state() == Cycle.State.NOTHING_NOTED ? Pairing.of(meetings, cycle, day) : Optional.empty());
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
            PopulationView population, Awaited awaited, LocalDate day, String number, List<BreedingSignView> signs) {
        var words = new CycleWords(population.profile().gestation(), awaited, day);
        var pairing = awaited.pairing();
        return new CycleView(
                number,
                day,
                stage(awaited, pairing.isPresent()),
                awaited.cycle().gravid(),
                signs,
                words.due(),
                pairing.map(Pairing::months).orElse(null),
                pairing.map(Pairing::reason).orElseGet(words::reason),
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
