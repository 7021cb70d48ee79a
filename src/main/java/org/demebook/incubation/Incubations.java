package org.demebook.incubation;

import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NOT_EGG_LAYING;
import static org.demebook.problem.ProblemType.NO_SUCH_INCUBATION;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.incubation.IncubationFacts.IncubationStarted;
import org.demebook.incubation.IncubationFacts.IncubatorRead;
import org.demebook.incubation.IncubationView.Degrees;
import org.demebook.incubation.IncubationView.ReadingView;
import org.demebook.incubation.NewIncubation.NewReading;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.notation.Words;
import org.demebook.problem.Refusal;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.registry.Populations;
import org.demebook.registry.Sight;
import org.demebook.taxon.BirthMode;

/** The clutches in incubators. */
@ApplicationScoped
public class Incubations {
    private static final String SEEN = Sight.writtenOrHeld("femaleId");

    /** Eggs that are kept outside of this are eggs whose unit was mistaken. */
    private static final BigDecimal COLDEST_CELSIUS = BigDecimal.valueOf(5);

    private static final BigDecimal HOTTEST_CELSIUS = BigDecimal.valueOf(50);

    @Inject
    Journal journal;

    @Inject
    Animals animals;

    @Inject
    Sight sight;

    @Inject
    Populations populations;

    @Inject
    Clock clock;

    // ── writing ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Records that the eggs of a female in a collection of the asker's went into an incubator. */
    @Transactional
    public IncubationView start(Standing by, String number, NewIncubation told) {
        journal.open(by.populationId());
        var female = animals.held(by, number);
        if (populations.get(by).birthMode() != BirthMode.EGG_LAYING) {
            throw new Refusal(
                    NOT_EGG_LAYING,
                    "The females of %s bear their young. If that is wrong, a coordinator corrects the population's birth mode."
                            .formatted(by.populationCode()));
        }
        var breaches = new ArrayList<Breach>();
        checkTemperature("setPoint", told.setPoint(), breaches);
        var tomorrow = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC).plusDays(1);
        if (told.startedOn().isAfter(tomorrow)) {
            breaches.add(Breach.error(
                    DATE_IN_FUTURE,
                    "startedOn",
                    told.startedOn(),
                    "%s has not come yet; record it when it has happened.".formatted(told.startedOn())));
        }
        Breach.refuse(breaches, null);
        var id = Journal.newId();
        journal.record(
                by.populationId(),
                by.keeperId(),
                new IncubationStarted(
                        id,
                        female.id(),
                        told.startedOn(),
                        told.eggs(),
                        told.setPoint().celsius().toPlainString(),
                        told.setPoint().written(),
                        Objects.requireNonNull(female.collectionId()),
                        Words.orNull(told.notes())));
        return get(by, id);
    }

    /** Records a reading; by whoever sees the incubation. */
    @Transactional
    public IncubationView read(Standing by, UUID incubationId, NewReading told) {
        journal.open(by.populationId());
        var incubation = require(by, incubationId);
        var now = clock.instant();
        var readAt = told.readAt() == null ? now : told.readAt();
        var breaches = new ArrayList<Breach>();
        checkTemperature("temperature", told.temperature(), breaches);
        if (readAt.isAfter(now.plus(Duration.ofHours(1)))) {
            breaches.add(Breach.error(
                    DATE_IN_FUTURE, "readAt", readAt, "%s has not come yet; check the clock.".formatted(readAt)));
        }
        // a local day begins up to 14 hours before that of UTC
        if (readAt.isBefore(
                incubation.startedOn.atStartOfDay(ZoneOffset.UTC).toInstant().minus(Duration.ofHours(14)))) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "readAt",
                    readAt,
                    "The eggs came into the incubator on %s; check the day.".formatted(incubation.startedOn)));
        }
        Breach.refuse(breaches, null);
        journal.record(
                by.populationId(),
                by.keeperId(),
                new IncubatorRead(
                        Journal.newId(),
                        incubationId,
                        readAt.truncatedTo(ChronoUnit.MILLIS),
                        told.temperature().celsius().toPlainString(),
                        told.temperature().written()));
        Incubation.flush();
        return get(by, incubationId);
    }

    private static void checkTemperature(String field, Temperature told, List<Breach> breaches) {
        var celsius = told.celsius();
        if (celsius.compareTo(COLDEST_CELSIUS) < 0 || celsius.compareTo(HOTTEST_CELSIUS) > 0) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    field,
                    told.written(),
                    "%s is %s °C; no clutch is kept at that. Is it in the other unit (c, f)?"
                            .formatted(told.written(), celsius.toPlainString())));
        }
    }

    // ── reading ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** One incubation; refuses with NO_SUCH_INCUBATION alike when there is none and when it is not for the asker. */
    @Transactional
    public IncubationView get(Standing by, UUID incubationId) {
        return views(by, List.of(require(by, incubationId))).get(0);
    }

    /** Those of a female that the asker sees, the latest first. */
    @Transactional
    public List<IncubationView> of(Standing by, String number) {
        var parameters = sight.parameters(by);
        parameters.put("female", animals.custody(by, number).id());
        return views(
                by,
                Incubation.list(
                        "populationId = :population and femaleId = :female and " + SEEN
                                + " order by startedOn desc, id desc",
                        parameters));
    }

    private Incubation require(Standing by, UUID incubationId) {
        var parameters = sight.parameters(by);
        parameters.put("id", incubationId);
        return Incubation.<Incubation>find("populationId = :population and id = :id and " + SEEN, parameters)
                .firstResultOptional()
                .orElseThrow(() -> new Refusal(
                        NO_SUCH_INCUBATION,
                        "There is no incubation %s among those that you may see.".formatted(incubationId)));
    }

    private List<IncubationView> views(Standing by, List<Incubation> incubations) {
        var numbers = animals.numbers(
                by.populationId(),
                incubations.stream().map(incubation -> incubation.femaleId).collect(Collectors.toSet()));
        var readings =
                IncubationReading.of(
                                by.populationId(),
                                incubations.stream()
                                        .map(incubation -> incubation.id)
                                        .toList())
                        .stream()
                        .collect(Collectors.groupingBy(reading -> reading.incubationId));
        return incubations.stream()
                .map(incubation -> view(
                        incubation, numbers.get(incubation.femaleId), readings.getOrDefault(incubation.id, List.of())))
                .toList();
    }

    private static IncubationView view(Incubation incubation, String female, List<IncubationReading> readings) {
        var shown = readings.stream()
                .map(reading -> {
                    var warmth = Warmth.of(reading.celsius, incubation.setPointCelsius);
                    return new ReadingView(
                            reading.id,
                            reading.readAt,
                            Degrees.of(reading.celsius, reading.written),
                            warmth,
                            warmth.advice());
                })
                .toList();
        return new IncubationView(
                incubation.id,
                female,
                incubation.startedOn,
                incubation.eggs,
                Degrees.of(incubation.setPointCelsius, incubation.setPointWritten),
                shown,
                warnings(shown),
                incubation.notes,
                incubation.revision);
    }

    /** Of the latest reading; and of the worst, which the eggs do not forget. */
    private static List<String> warnings(List<ReadingView> readings) {
        var warnings = new LinkedHashSet<String>();
        if (!readings.isEmpty() && readings.get(0).advice() != null) {
            warnings.add(readings.get(0).advice());
        }
        readings.stream()
                .filter(reading -> reading.warmth() == Warmth.OVERHEATED)
                .findFirst()
                .ifPresent(reading -> warnings.add("Overheated on %s (%s °C): look at the young for deformities."
                        .formatted(
                                LocalDate.ofInstant(reading.readAt(), ZoneOffset.UTC),
                                reading.temperature().celsius().toPlainString())));
        return List.copyOf(warnings);
    }
}
