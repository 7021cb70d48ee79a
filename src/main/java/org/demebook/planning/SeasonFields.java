package org.demebook.planning;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;
import org.demebook.litter.BirthDays;
import org.demebook.notation.Sex;
import org.demebook.planning.SeasonField.Candidate;
import org.demebook.planning.SeasonField.Hindered;
import org.demebook.problem.Refusal;
import org.demebook.rearing.TestsBeforePairing;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;

/** Looks at a population as one asker may know it, to plan with: the one place that says who may be paired on a day. */
@ApplicationScoped
public class SeasonFields {
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
    Clock clock;

    /**
     * What a season can be planned with, as far as the asker may know: candidates are living animals of known sex whose number
     * and parentage they may read to pair animals. Refuses with BAD_PARAMETER a day that is over. Costs a few queries and
     * O(population).
     */
    public SeasonField of(Standing by, LocalDate pairOn) {
        var sighted = sighted(by, pairOn);
        var candidates = sighted.candidates();
        var places = sighted.places();
        var hindered = new ArrayList<Hindered>();
        for (int row : known(candidates)) {
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
        var places = new Places(
                snapshot,
                known(candidates),
                row -> own.contains(row) || isWhereaboutsGranted(lens, snapshot.subject(row)),
                Places.quarantine(pairOn, profile.daysOfQuarantine(), today));
        return new Sighted(snapshot, own, candidates, places, lens, profile);
    }

    private static boolean isWhereaboutsGranted(Lens lens, Subject subject) {
        return lens.may(subject, FieldGroup.CUSTODY, Action.READ)
                || lens.may(subject, FieldGroup.CUSTODY, Action.COMPUTE);
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
        for (var birth : birthDays.of(by.populationId())) {
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

    /** In words, by row, of those whose tests do not count on the day. */
    private Map<Integer, String> tests(
            Standing by, OwnAnimals own, Lens lens, BitSet rows, LocalDate pairOn, PopulationView population) {
        var snapshot = own.snapshot();
        var animals = rows.stream()
                .mapToObj(row -> new TestsBeforePairing.Candidate(snapshot.subject(row), own.contains(row)))
                .toList();
        var agents = population.profile().breeding().testsBeforePairing();
        var words = new HashMap<Integer, String>();
        tests.of(by, lens, animals, pairOn, agents).forEach((id, standing) -> {
            if (!standing.inDate()) {
                int row = snapshot.row(id);
                words.put(row, own.contains(row) ? "on hold: " + standing.inTheWay() : TEST);
            }
        });
        return words;
    }
}
