package org.demebook.census;

import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;
import static org.demebook.problem.ProblemType.DAY_COUNTED_ALREADY;
import static org.demebook.problem.ProblemType.NO_SUCH_RELEASE;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.census.CensusFacts.CountsReleased;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.census.CountTable.Counted;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.Populations;
import org.demebook.rest.Page;
import org.jspecify.annotations.Nullable;

/** Counts the living animals of a population and releases the counts to everybody. */
@ApplicationScoped
public class Census {
    private static final MathContext TWO_FIGURES = new MathContext(2, RoundingMode.HALF_EVEN);

    private static final String METHOD =
            "Animals registered as living on the day, by sex and age class: young under one year, juvenile under %d days,"
                    + " adult from then on, unknown where the birth is not known well enough. Animals are counted where they"
                    + " are held at the time of the release. A count is given where animals of at least three keepers stand"
                    + " behind it; keepers of one household are one. A total is given where none of its counts is withheld."
                    + " Gene diversity is 1 − the mean kinship of the animals counted, founder genome equivalents are"
                    + " 1 / (2 × mean kinship) from coancestry; an unknown parent counts as unrelated to all.";

    /** What a release will say; computed, not yet released. */
    public record Counts(
            LocalDate countedOn,
            String keepers,
            List<Cell> cells,
            @Nullable String geneDiversity,
            @Nullable String founderGenomeEquivalents,
            String method) {}

    @Inject
    Ancestries ancestries;

    @Inject
    Populations populations;

    @Inject
    Keepers keepers;

    @Inject
    Journal journal;

    @Inject
    Clock clock;

    /**
     * Counts the animals of a day, for a coordinator. Refuses with DATE_IN_FUTURE. To be called before the transaction
     * that releases them.
     */
    public Counts count(Standing by, NewCountRelease release) {
        Keepers.requireCoordinator(by);
        var day = Objects.requireNonNullElseGet(release.countedOn(), () -> LocalDate.now(clock));
        if (day.isAfter(LocalDate.now(clock))) {
            throw new Refusal(
                    DATE_IN_FUTURE, "%s lies in the future; animals are counted when it has come.".formatted(day));
        }
        var snapshot = ancestries.whole(by);
        int daysOfAgeToBreed = populations.get(by).profile().breeding().daysOfAgeToBreed();
        int[] living = livingOn(snapshot, day);
        var households = keepers.households(by.populationId());
        var table = new CountTable(IntStream.of(living)
                .mapToObj(row -> counted(snapshot, row, day, daysOfAgeToBreed, households))
                .toList());
        boolean told = table.households() >= CountTable.FEWEST_HOUSEHOLDS;
        var pool = told ? snapshot.pedigree().pool(living) : null;
        return new Counts(
                day,
                CountTable.range(table.households()),
                table.cells(),
                pool == null ? null : twoFigures(pool.geneDiversity()),
                pool == null ? null : twoFigures(pool.founderGenomeEquivalents()),
                METHOD.formatted(daysOfAgeToBreed));
    }

    /** Those that are known to live on the day; where a birth or a death is known roughly, both are taken as early. */
    private static int[] livingOn(Snapshot snapshot, LocalDate day) {
        return IntStream.range(0, snapshot.size())
                .filter(row -> {
                    var born = snapshot.bornEarliest(row);
                    var died = snapshot.diedEarliest(row);
                    return (born == null || !born.isAfter(day))
                            && (snapshot.alive(row) || died != null && died.isAfter(day));
                })
                .toArray();
    }

    private static Counted counted(
            Snapshot snapshot, int row, LocalDate day, int daysOfAgeToBreed, Map<UUID, UUID> households) {
        var owner = Objects.requireNonNull(snapshot.owner(row));
        var holder = Objects.requireNonNullElse(snapshot.collection(row), owner);
        return new Counted(
                snapshot.sex(row),
                AgeClass.on(day, snapshot.bornEarliest(row), snapshot.bornLatest(row), daysOfAgeToBreed),
                households.get(holder),
                households.get(owner));
    }

    private static String twoFigures(double value) {
        return new BigDecimal(value).round(TWO_FIGURES).toPlainString();
    }

    /** Releases counts for good. Refuses with DAY_COUNTED_ALREADY. */
    @Transactional
    public CountReleaseView release(Standing by, Counts counts) {
        Keepers.requireCoordinator(by);
        journal.open(by.populationId());
        if (CountRelease.exists(by.populationId(), counts.countedOn())) {
            throw new Refusal(
                    DAY_COUNTED_ALREADY,
                    "The counts of %s are released and stay as they are; count on another day."
                            .formatted(counts.countedOn()));
        }
        var released = new CountsReleased(
                by.populationCode(),
                counts.countedOn(),
                counts.keepers(),
                counts.cells(),
                counts.geneDiversity(),
                counts.founderGenomeEquivalents(),
                counts.method());
        return released.view(journal.record(by.populationId(), by.keeperId(), released));
    }

    /** What was released, the latest first; empty alike for a population that does not exist. */
    @Transactional
    public Page<CountReleaseView> releases(String populationCode, @Nullable LocalDate before, int limit) {
        var read = CountRelease.of(populationCode, before, limit + 1).stream()
                .map(CountRelease::view)
                .toList();
        return Page.of(read, limit, release -> release.countedOn().toString());
    }

    /** One release; refuses with NO_SUCH_RELEASE alike for a population that does not exist. */
    @Transactional
    public CountReleaseView get(String populationCode, LocalDate countedOn) {
        return CountRelease.of(populationCode, countedOn)
                .map(CountRelease::view)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_RELEASE, "No counts of %s were released for %s.".formatted(countedOn, populationCode)));
    }
}
