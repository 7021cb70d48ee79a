package org.demebook.breeding;

import static org.demebook.problem.ProblemType.BORN_BEFORE_SHED;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.UUID;
import org.demebook.gestation.CandidateSires;
import org.demebook.gestation.CandidateSires.Candidate;
import org.demebook.gestation.Conception;
import org.demebook.gestation.Grade;
import org.demebook.gestation.HowKnown;
import org.demebook.gestation.Meeting;
import org.demebook.keeper.Standing;
import org.demebook.litter.BreedingRecord;
import org.demebook.litter.Mate;
import org.demebook.notation.RoughDate;
import org.demebook.problem.Rule;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/** What was recorded before a birth, held against it: which males the litter may come from, and whether the days agree. */
@ApplicationScoped
public class Sires implements BreedingRecord {
    /** A birth is seldom further from the shed than this; common practice, no source. */
    private static final int DAYS_FROM_SHED_AT_MOST = 150;

    @Inject
    Histories histories;

    @Inject
    Populations populations;

    @Inject
    Animals animals;

    @Inject
    RecordRules rules;

    /**
     * The males that a litter of a dam may come from, the likeliest first.
     *
     * @param bornOn the day of the birth, or the day up to which the candidates are wanted
     * @param conceivedOn the ovulation, or the usual number of days before the birth
     * @param fromOvulation whether the ovulation was noted
     * @param note what the shares are
     */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    public record CandidateSiresView(
            String dam,
            LocalDate bornOn,
            LocalDate conceivedOn,
            boolean fromOvulation,
            List<CandidateSireView> candidates,
            String note) {}

    /**
     * One male.
     *
     * @param male studbook number
     * @param lastMetOn last day before the birth on which the two could mate: of separation, sale or death
     * @param daysBeforeConception from that day to the conception; 0 when they were together then
     * @param advice what follows from the grade; absent when nothing does
     * @param share in [0, 1]
     */
    public record CandidateSireView(
            String male,
            LocalDate lastMetOn,
            int daysBeforeConception,
            Grade grade,
            boolean copulationSeen,
            @Nullable String advice,
            BigDecimal share) {}

    private static final String SHARES =
            "Shares are common practice, no source: a male who was with her at the conception weighs 1, an earlier one half as much for every 90 days that his sperm was stored, one seen to mate twice as much. Change them as you know better; a DNA test decides.";

    /**
     * The males that a litter of a dam in the asker's collections may come from.
     *
     * @param bornOn the day of the birth; null for today
     */
    @Transactional
    public CandidateSiresView candidates(Standing by, String number, @Nullable LocalDate bornOn) {
        var dam = animals.held(by, number);
        var day = bornOn == null ? rules.today() : bornOn;
        var born = RoughDate.of(day);
        var population = populations.get(by);
        var cycle = cycle(population, by.populationId(), dam.id(), born);
        var conception = Conception.of(
                born, cycle.ovulation().orElse(null), population.profile().gestation());
        var found = candidates(population, by.populationId(), dam.id(), born, conception);
        var ids = new HashSet<UUID>();
        found.forEach(male -> ids.add(male.maleId()));
        var numbers = animals.numbers(by.populationId(), ids);
        return new CandidateSiresView(
                dam.number(),
                day,
                conception.earliestOn(),
                cycle.ovulation().isPresent(),
                found.stream()
                        .map(male -> new CandidateSireView(
                                numbers.get(male.maleId()),
                                male.lastMetOn(),
                                male.daysBeforeConception(),
                                male.grade(),
                                male.copulationSeen(),
                                advice(male.grade()),
                                male.share()))
                        .toList(),
                SHARES);
    }

    private static @Nullable String advice(Grade grade) {
        return switch (grade) {
            case IN_TIME -> null;
            case STORED_SPERM -> "Sperm may have been stored.";
            case RARE -> "Possible but rare; a DNA test is advised.";
            case BEYOND -> "Beyond every published case; consider another male, or none.";
        };
    }

    @Override
    @Transactional
    public List<Mate> mates(UUID populationId, UUID damId, RoughDate born) {
        var population = populations.get(populationId);
        return candidates(population, populationId, damId, born, conception(population, populationId, damId, born))
                .stream()
                .map(male -> new Mate(
                        male.maleId(), male.lastMetOn(), male.daysBeforeConception(), male.grade(), male.share()))
                .toList();
    }

    @Override
    @Transactional
    public OptionalInt daysFromShed(UUID populationId, UUID damId, RoughDate born) {
        var cycle = cycle(populations.get(populationId), populationId, damId, born);
        return born.day().isEmpty() || cycle.shed().isEmpty()
                ? OptionalInt.empty()
                : OptionalInt.of((int) ChronoUnit.DAYS.between(
                        cycle.shed().get().on(), born.day().get()));
    }

    @Override
    @Transactional
    public List<Breach> check(Standing by, Custody dam, RoughDate born) {
        var population = populations.get(by);
        var breaches = new ArrayList<Breach>();
        checkPairing(by, population, dam, born, breaches);
        checkShed(by, population, dam, born, breaches);
        return breaches;
    }

    /** A birth before the first pairing of its cycle, or too soon after it. */
    private void checkPairing(
            Standing by, PopulationView population, Custody dam, RoughDate born, List<Breach> breaches) {
        var first = born.earliest() == null ? born.latest() : born.earliest();
        var last = born.latest() == null ? born.earliest() : born.latest();
        var until = Objects.requireNonNull(last)
                .plusDays(population.profile().breeding().daysBetweenLitters());
        var ofThisCycle = histories.meetings(by.populationId(), dam.id(), until).stream()
                .filter(meeting ->
                        meeting.fromOn().isAfter(Objects.requireNonNull(first).minusDays(Cycle.DAYS))
                                && !meeting.fromOn().isAfter(until))
                .min(Comparator.comparing(Meeting::fromOn));
        var conception = conception(population, by.populationId(), dam.id(), born);
        if (ofThisCycle.isEmpty() || !ofThisCycle.get().fromOn().isAfter(conception.lastPossibleOn())) {
            return;
        }
        var male =
                animals.custody(by.populationId(), ofThisCycle.get().maleId()).number();
        var told = "A litter born on %s was conceived about %s, but %s met %s, the first male noted for it, on %s"
                .formatted(
                        born,
                        conception.earliestOn(),
                        dam.number(),
                        male,
                        ofThisCycle.get().fromOn());
        var stored = candidates(population, by.populationId(), dam.id(), born, conception).stream()
                .filter(candidate -> candidate.grade() != Grade.BEYOND)
                .findFirst();
        breaches.add(stored.map(candidate -> Breach.notice(
                        Rule.BORN_BEFORE_PAIRING,
                        "born",
                        born,
                        told
                                + "; sperm stored from %s, last met on %s, may explain it."
                                        .formatted(
                                                animals.custody(by.populationId(), candidate.maleId())
                                                        .number(),
                                                candidate.lastMetOn()),
                        null))
                .orElseGet(() -> Breach.warning(
                        Rule.BORN_BEFORE_PAIRING,
                        "born",
                        born,
                        told + ". Check both days; or note an earlier pairing, or a litter without a sire.",
                        null)));
    }

    /** A birth too soon or too late after the shed of its cycle, or before it. */
    private void checkShed(Standing by, PopulationView population, Custody dam, RoughDate born, List<Breach> breaches) {
        var history = histories.of(by.populationId(), dam.id());
        var shed = Cycle.before(born, population.birthMode(), history.signs(), history.births())
                .shed();
        int fewest = population.profile().gestation().daysFromShedToBirthEarliest();
        if (shed.isPresent() && born.day().isPresent()) {
            long days = ChronoUnit.DAYS.between(shed.get().on(), born.day().get());
            if (days < fewest || days > DAYS_FROM_SHED_AT_MOST) {
                breaches.add(Breach.warning(
                        Rule.GESTATION_OUT_OF_RANGE,
                        "born",
                        born,
                        "%s is %d days after the shed of %s; usual are %d to %d. Was that an ordinary shed, or is one of the days wrong?"
                                .formatted(born, days, shed.get().on(), fewest, DAYS_FROM_SHED_AT_MOST),
                        "The shed of %s is: an ordinary shed is easily taken for it."
                                .formatted(shed.get().on())));
            }
        } else if (shed.isEmpty()) {
            history.signs().stream()
                    .filter(sign -> sign.kind() == SignKind.POST_OVULATION_SHED
                            && born.surelyBefore(sign.on())
                            && sign.on()
                                    .isBefore(Objects.requireNonNull(born.latest())
                                            .plusDays(population
                                                    .profile()
                                                    .breeding()
                                                    .daysBetweenLitters())))
                    .min(Comparator.comparing(Sign::on))
                    .ifPresent(sign -> breaches.add(bornBeforeShed(sign, born)));
        }
    }

    private static Breach bornBeforeShed(Sign shed, RoughDate born) {
        if (shed.howKnown() == HowKnown.GUESSED) {
            return Breach.warning(
                    Rule.BORN_BEFORE_SHED,
                    "born",
                    born,
                    "%s is before the shed of %s, and no earlier one is noted: correct the shed."
                            .formatted(born, shed.on()),
                    "The shed: it was guessed.");
        }
        return Breach.block(
                BORN_BEFORE_SHED,
                Rule.BORN_BEFORE_SHED,
                "born",
                born,
                "%s is before the post-ovulation shed of %s, and no earlier one is noted: a birth follows it by three months. Correct the day of the birth or of the shed, or withdraw the shed if it was an ordinary one."
                        .formatted(born, shed.on()),
                null);
    }

    private Cycle cycle(PopulationView population, UUID populationId, UUID damId, RoughDate born) {
        var history = histories.of(populationId, damId);
        return Cycle.before(born, population.birthMode(), history.signs(), history.births());
    }

    private Conception conception(PopulationView population, UUID populationId, UUID damId, RoughDate born) {
        return Conception.of(
                born,
                cycle(population, populationId, damId, born).ovulation().orElse(null),
                population.profile().gestation());
    }

    private List<Candidate> candidates(
            PopulationView population, UUID populationId, UUID damId, RoughDate born, Conception conception) {
        var last = Objects.requireNonNull(born.latest() == null ? born.earliest() : born.latest());
        return CandidateSires.of(conception, histories.meetings(populationId, damId, last), population.profile());
    }
}
