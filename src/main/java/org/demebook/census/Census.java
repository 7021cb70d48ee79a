package org.demebook.census;

import static org.demebook.problem.ProblemType.COUNTS_NOT_SAFE;
import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;
import static org.demebook.problem.ProblemType.DAY_COUNTED_ALREADY;
import static org.demebook.problem.ProblemType.NO_SUCH_RELEASE;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.census.CensusFacts.CountsReleased;
import org.demebook.census.Preparation.Earlier;
import org.demebook.consent.Action;
import org.demebook.consent.Audience;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Purpose;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Regions;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.registry.Populations;
import org.demebook.rest.Page;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/** Counts the living animals of a population and releases the counts to everybody. */
@ApplicationScoped
public class Census {
    private static final MathContext TWO_FIGURES = new MathContext(2, RoundingMode.HALF_EVEN);

    private static final String METHOD =
            "Animals registered as living on the day whose keepers let them be counted, by sex and age class (young under one year, juvenile under %d days,"
                    + " immature both, adult from then on, unknown where the birth is not known well enough); by decade of"
                    + " birth%s. Animals are counted where they are held at the time of the release; one that is reported in two"
                    + " places counts once. Statistical disclosure"
                    + " control is applied: a count is withheld where too few keepers stand behind it or one of them holds"
                    + " most of it, and so are the fewest others from which it would follow, also together with earlier"
                    + " releases; keepers of one household are one. For a withheld count the bounds are given that follow"
                    + " from the others. Gene diversity is 1 − the mean kinship of the animals counted, founder genome"
                    + " equivalents are 1 / (2 × mean kinship) from coancestry; an unknown parent counts as unrelated to"
                    + " all.";

    private static final String METHOD_OF_REGIONS =
            "; by region, as the collection in which an animal lives states it and all whose it is let it be counted; others"
                    + " as not stated";

    /** What a release will say; computed, not yet released. */
    public static final class Counts {
        private final LocalDate countedOn;
        private final List<LocalDate> earlier;
        private final @Nullable CountsReleased released;

        private Counts(LocalDate countedOn, List<LocalDate> earlier, @Nullable CountsReleased released) {
            this.countedOn = countedOn;
            this.earlier = earlier;
            this.released = released;
        }
    }

    /** What is known before anything is computed. */
    private record Known(List<Earlier> earlier, CountRulesView rules, Set<UUID> waivers) {
        List<LocalDate> days() {
            return earlier.stream().map(release -> release.view().countedOn()).toList();
        }
    }

    @Inject
    Ancestries ancestries;

    @Inject
    Populations populations;

    @Inject
    Keepers keepers;

    @Inject
    Regions regions;

    @Inject
    Journal journal;

    @Inject
    Consents consents;

    @Inject
    Clock clock;

    /**
     * Counts the animals of a day, for a coordinator. To be called before the transaction that releases them. Refuses with
     * DATE_IN_FUTURE and COUNTS_NOT_SAFE; a day that was counted already is refused by {@link #release}.
     */
    public Counts count(Standing by, NewCountRelease release) {
        var day = day(by, release);
        var at = clock.instant();
        var snapshot = ancestries.published(by, at);
        var lens = consents.lens(Audience.PUBLIC(by.populationId()), Purpose.PUBLIC_COUNTS, at);
        var population = populations.get(by);
        int daysOfAgeToBreed = population.profile().breeding().daysOfAgeToBreed();
        var known = QuarkusTransaction.requiringNew()
                .call(() -> known(by.populationId(), ancestries.whole(by), daysOfAgeToBreed));
        if (known.days().contains(day)) {
            return new Counts(day, known.days(), null);
        }
        var stated = regions.stated(by.populationId());
        var headcount = new Headcount(
                snapshot,
                day,
                daysOfAgeToBreed,
                row -> lens.may(snapshot.subject(row), FieldGroup.IDENTITY, Action.PUBLISH_IN_AGGREGATE),
                row -> lens.may(snapshot.subject(row), FieldGroup.COARSE_PLACE, Action.PUBLISH_IN_AGGREGATE)
                        ? stated.get(Headcount.holder(snapshot, row))
                        : null);
        var respondents = new Respondents(
                keepers.households(by.populationId()),
                keepers.keepersOfCollections(by.populationId()),
                known.waivers());
        var preparation = new Preparation(
                day,
                headcount.animals(),
                regions.fixed(by.populationId()).names(),
                respondents,
                daysOfAgeToBreed,
                known.rules());
        var cells = preparation.cells(known.earlier());
        boolean told = preparation.households() >= CountRange.FEWEST;
        var pool = told ? snapshot.pedigree().pool(headcount.rows()) : null;
        return new Counts(
                day,
                known.days(),
                new CountsReleased(
                        by.populationCode(),
                        population.name(),
                        population.taxon(),
                        day,
                        CountRange.of(preparation.households()),
                        cells,
                        pool == null ? null : twoFigures(pool.geneDiversity()),
                        pool == null ? null : twoFigures(pool.founderGenomeEquivalents()),
                        METHOD.formatted(
                                daysOfAgeToBreed,
                                cells.stream().anyMatch(cell -> Heading.of(cell).isRegion()) ? METHOD_OF_REGIONS : ""),
                        headcount.animals()));
    }

    /** The day that is asked for, if a coordinator asks and it has come. */
    private LocalDate day(Standing by, NewCountRelease release) {
        Keepers.requireCoordinator(by);
        var today = LocalDate.now(clock);
        var day = Objects.requireNonNullElse(release.countedOn(), today);
        if (day.isAfter(today)) {
            throw new Refusal(
                    DATE_IN_FUTURE, "%s lies in the future; animals are counted when it has come.".formatted(day));
        }
        return day;
    }

    /** The day that is to be counted. Refuses what {@link #count} and {@link #release} would refuse without counting. */
    @Transactional
    LocalDate countable(Standing by, NewCountRelease release) {
        var day = day(by, release);
        if (CountRelease.exists(by.populationId(), day)) {
            throw new Refusal(DAY_COUNTED_ALREADY, countedAlready(day));
        }
        return day;
    }

    private static String countedAlready(LocalDate day) {
        return "The counts of %s are released and stay as they are; count on another day.".formatted(day);
    }

    @WholeRegister
    Known known(UUID populationId, Snapshot snapshot, int daysOfAgeToBreed) {
        var earlier = CountRelease.of(populationId).stream()
                .map(view -> new Earlier(
                        view, CountBasis.of(populationId, view.countedOn()).orElseGet(() -> new Headcount(
                                        snapshot, view.countedOn(), daysOfAgeToBreed, row -> true, row -> null)
                                .animals())))
                .toList();
        return new Known(earlier, CountRules.of(populationId), CountWaiver.of(populationId));
    }

    private static String twoFigures(double value) {
        return new BigDecimal(value).round(TWO_FIGURES).toPlainString();
    }

    /** Releases counts for good. Refuses with DAY_COUNTED_ALREADY and COUNTS_NOT_SAFE. */
    @Transactional
    public CountReleaseView release(Standing by, Counts counts) {
        Keepers.requireCoordinator(by);
        journal.open(by.populationId());
        if (counts.released == null || CountRelease.exists(by.populationId(), counts.countedOn)) {
            throw new Refusal(DAY_COUNTED_ALREADY, countedAlready(counts.countedOn));
        }
        requireNothingReleasedMeanwhile(by, counts);
        return counts.released.view(journal.record(by.populationId(), by.keeperId(), counts.released));
    }

    /** What was audited is safe beside the releases that there were then. */
    private static void requireNothingReleasedMeanwhile(Standing by, Counts counts) {
        for (var release : CountRelease.of(by.populationId())) {
            if (!counts.earlier.contains(release.countedOn())) {
                throw new Refusal(
                        COUNTS_NOT_SAFE,
                        "The counts of %s were released while those of %s were prepared; ask for them again."
                                .formatted(release.countedOn(), counts.countedOn));
            }
        }
    }

    /** What was released, the latest first; empty alike for a population that does not exist. */
    @Transactional
    public Page<CountReleaseView> releases(String populationCode, @Nullable LocalDate before, int limit) {
        var read = CountRelease.of(populationCode, before, limit + 1).stream()
                .map(CountRelease::view)
                .toList();
        return Page.of(read, limit, release -> release.countedOn().toString());
    }

    /** The latest release of each population that released any, by the populations' codes; needs no sign-in. */
    @Transactional
    public List<CountReleaseView> latestOfEach(int most) {
        return CountRelease.latestOfEach(most).stream().map(CountRelease::view).toList();
    }

    /** One release; refuses with NO_SUCH_RELEASE alike for a population that does not exist. */
    @Transactional
    public CountReleaseView get(String populationCode, LocalDate countedOn) {
        return CountRelease.of(populationCode, countedOn)
                .map(CountRelease::view)
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_RELEASE, "No counts of %s were released for %s.".formatted(countedOn, populationCode)));
    }

    /** The same of a release that has a table of regions; refuses one that has none with NO_SUCH_RELEASE too. */
    @Transactional
    public CountReleaseView withRegions(String populationCode, LocalDate countedOn) {
        var release = get(populationCode, countedOn);
        if (release.cells().stream().noneMatch(cell -> Heading.of(cell).isRegion())) {
            throw new Refusal(
                    NO_SUCH_RELEASE,
                    "The counts of %s that were released for %s have no table of regions; darwin-core.zip has what they tell."
                            .formatted(countedOn, populationCode));
        }
        return release;
    }
}
