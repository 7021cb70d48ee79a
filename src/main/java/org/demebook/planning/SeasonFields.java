package org.demebook.planning;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.consent.Action;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.consent.Subject;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.RegionDistances;
import org.demebook.keeper.Regions;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;
import org.demebook.litter.BirthDays;
import org.demebook.litter.BirthDays.BirthDay;
import org.demebook.notation.Sex;
import org.demebook.planning.SeasonField.Barrier;
import org.demebook.planning.SeasonField.BarrierKind;
import org.demebook.planning.SeasonField.Candidate;
import org.demebook.planning.SeasonField.Hindered;
import org.demebook.problem.Refusal;
import org.demebook.rearing.TestsBeforePairing;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;

/** Looks at a population as one asker may know it, to plan with: the one place that says who may be paired on a day. */
@ApplicationScoped
public class SeasonFields {
    private static final int POPULATIONS_IN_MEMORY = 16;

    /** What others are told, whatever it is: not even which test, nor whether it ran out or was not negative. */
    private static final String TEST =
            "on hold: test. One that the pairing needs is missing, not in date or not negative; its keeper knows which";

    @Inject
    Ancestries ancestries;

    @Inject
    Consents consents;

    @Inject
    Populations populations;

    @Inject
    Keepers keepers;

    @Inject
    BreedingHolds holds;

    @Inject
    BirthDays birthDays;

    @Inject
    TestsBeforePairing tests;

    @Inject
    TermsOfCollections termsOfCollections;

    @Inject
    Regions regions;

    @Inject
    Clock clock;

    /** A population as its journal left it at one entry, or later. */
    private record At(UUID populationId, long head) {}

    /** What all keepers wrote down that bears on who may be paired; kept, since nothing but an entry changes it. */
    private record Noted(
            List<BirthDay> births,
            Map<UUID, PairingTerms> terms,
            Map<UUID, String> regions,
            RegionDistances distances) {}

    private final Cache<At, Noted> noted =
            Caffeine.newBuilder().maximumSize(POPULATIONS_IN_MEMORY).build();

    private Noted noted(Standing by) {
        return noted.get(
                new At(by.populationId(), by.head()),
                at -> new Noted(
                        birthDays.of(at.populationId),
                        termsOfCollections.of(at.populationId),
                        regions.stated(at.populationId),
                        regions.distances(at.populationId)));
    }

    /**
     * What a season can be planned with, as far as the asker may know: candidates are living animals of this node, of known sex, whose
     * number and parentage they may read to pair animals. Those on other nodes count in the figures: their keepers could not
     * answer. Refuses with BAD_PARAMETER a day that is over. Costs a few queries and
     * O(population).
     */
    public SeasonField of(Standing by, LocalDate pairOn) {
        var sighted = sighted(by, pairOn);
        var candidates = sighted.candidates();
        var places = sighted.places();
        var hindered = new ArrayList<Hindered>();
        for (int row : known(candidates)) {
            if (sighted.livesElsewhere(row)) {
                continue;
            }
            candidates
                    .objection(row)
                    .ifPresent(objection ->
                            hindered.add(new Hindered(row, places.of(row), objection.hindrance(), objection.words())));
        }
        return new SeasonField(
                sighted.snapshot(),
                pairOn,
                proposable(sighted, Sex.FEMALE),
                proposable(sighted, Sex.MALE),
                hindered,
                places.all(),
                places::between);
    }

    private static List<Candidate> proposable(Sighted sighted, Sex sex) {
        return IntStream.of(sighted.candidates().proposable(sex))
                .filter(row -> !sighted.livesElsewhere(row))
                .mapToObj(row -> new Candidate(
                        row, sighted.places().of(row), sighted.candidates().notes(row)))
                .toList();
    }

    /** Rows of those of either sex whose keepers let them be proposed, ascending. */
    private static int[] known(Candidates candidates) {
        return IntStream.concat(IntStream.of(candidates.living(Sex.FEMALE)), IntStream.of(candidates.living(Sex.MALE)))
                .sorted()
                .toArray();
    }

    /** What the asker may know of the population, and which of it may be proposed to them. */
    Sighted sighted(Standing by, LocalDate pairOn) {
        var at = clock.instant();
        var today = LocalDate.now(clock);
        if (pairOn.isBefore(today)) {
            throw new Refusal(BAD_PARAMETER, "%s is over; ask for a pairing today or later.".formatted(pairOn));
        }
        var snapshot = ancestries.seen(by, at);
        var granted = ancestries.seen(by, Purpose.PAIRING_COMPUTATION, at);
        var lens = consents.lens(by, Purpose.PAIRING_COMPUTATION, at);
        var own = new OwnAnimals(snapshot, keepers.collectionIds(by));
        var population = populations.get(by);
        var profile = population.profile();
        var proposable = proposable(snapshot, granted);
        var resting = Resting.of(snapshot, pairOn, today, profile, population.birthMode());
        var candidates = new Candidates(
                snapshot,
                pairOn,
                profile.breeding().daysOfAgeToBreed(),
                proposable,
                row -> own.contains(row) || lens.may(snapshot.subject(row), FieldGroup.CUSTODY, Action.READ),
                new Hindrances(
                        holds.in(by, snapshot),
                        resting.females(litters(by, own, lens)),
                        resting.daysBetween(),
                        tests(by, own, lens, proposable, pairOn, population)));
        var noted = noted(by);
        var places = Places.of(
                snapshot,
                known(candidates),
                new Places.Granted() {
                    @Override
                    public boolean together(int row) {
                        return isTogether(lens, noted.terms().keySet(), snapshot.subject(row));
                    }

                    @Override
                    public boolean region(int row) {
                        return mayUse(lens, snapshot.subject(row), FieldGroup.COARSE_PLACE);
                    }
                },
                own.collectionIds(),
                noted.terms(),
                noted.regions(),
                noted.distances(),
                quarantine(pairOn, profile.daysOfQuarantine(), today));
        return new Sighted(snapshot, own, candidates, places, lens, profile);
    }

    /** Custody may be used, or all whose the animal is said that plans count it as living with the others there. */
    private static boolean isTogether(Lens lens, Set<UUID> stated, Subject subject) {
        return !subject.parties().isEmpty() && stated.containsAll(subject.parties())
                || mayUse(lens, subject, FieldGroup.CUSTODY);
    }

    private static boolean mayUse(Lens lens, Subject subject, FieldGroup fieldGroup) {
        return lens.may(subject, fieldGroup, Action.READ) || lens.may(subject, fieldGroup, Action.COMPUTE);
    }

    /** That it is too late to bring an animal from elsewhere. */
    private static Optional<Barrier> quarantine(LocalDate pairOn, int daysOfQuarantine, LocalDate today) {
        return pairOn.minusDays(daysOfQuarantine).isBefore(today)
                ? Optional.of(new Barrier(
                        BarrierKind.QUARANTINE,
                        "an animal that arrives today has %d days of quarantine until %s, and the pairing is on %s"
                                .formatted(daysOfQuarantine, today.plusDays(daysOfQuarantine), pairOn)))
                : Optional.empty();
    }

    /** Those of which number and parents may be read in order to pair animals. */
    private static BitSet proposable(Snapshot snapshot, Snapshot granted) {
        var proposable = new BitSet(snapshot.size());
        for (int row : snapshot.living()) {
            int same = granted == snapshot ? row : granted.row(snapshot.id(row));
            proposable.set(row, same != Pedigree.UNKNOWN && granted.isShown(same) && granted.isParentageShown(same));
        }
        return proposable;
    }

    /** Of dams that live with the asker, and those whose keepers let what came of them be read or computed with. */
    private List<Resting.Known> litters(Standing by, OwnAnimals own, Lens lens) {
        var known = new ArrayList<Resting.Known>();
        for (var birth : noted(by).births()) {
            int dam = own.snapshot().row(birth.damId());
            var subject = new Subject(birth.damId(), Set.of(birth.collectionId()));
            if (dam != Pedigree.UNKNOWN && own.contains(dam)
                    || lens.may(subject, FieldGroup.BREEDING_RESULTS, Action.READ)) {
                known.add(new Resting.Known(birth, true));
            } else if (lens.may(subject, FieldGroup.BREEDING_RESULTS, Action.COMPUTE)) {
                known.add(new Resting.Known(birth, false));
            }
        }
        return known;
    }

    /** By row, of those of whose tests anything may be used. */
    private Map<Integer, TestWords> tests(
            Standing by, OwnAnimals own, Lens lens, BitSet rows, LocalDate pairOn, PopulationView population) {
        var snapshot = own.snapshot();
        var animals = rows.stream()
                .mapToObj(row -> new TestsBeforePairing.Candidate(snapshot.subject(row), own.contains(row)))
                .toList();
        var agents = population.profile().breeding().testsBeforePairing();
        var words = new HashMap<Integer, TestWords>();
        tests.of(by, lens, animals, pairOn, agents).forEach((id, standing) -> {
            int row = snapshot.row(id);
            words.put(
                    row,
                    standing.inDate()
                            ? TestWords.IN_DATE
                            : new TestWords(own.contains(row) ? "on hold: " + standing.inTheWay() : TEST));
        });
        return words;
    }
}
