package org.demebook.planning;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.NOT_YOUR_ANIMAL;
import static org.demebook.problem.ProblemType.NO_CANDIDATES;
import static org.demebook.problem.ProblemType.ON_HOLD;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.kinship.GenePool;
import org.demebook.notation.Sex;
import org.demebook.planning.Candidates.Age;
import org.demebook.planning.PairingsView.Excluded;
import org.demebook.planning.Ranking.Pair;
import org.demebook.problem.Refusal;
import org.demebook.registry.Populations;
import org.jspecify.annotations.Nullable;

/** Proposes pairs. All arithmetic runs on a snapshot, with no transaction open. */
@ApplicationScoped
public class Planner {
    /**
     * What is asked.
     *
     * @param maximumInbreeding of the young, in [0, 1]
     * @param mostYoung up to how many young kept are looked at
     * @param limit how many pairs at most
     */
    public record Question(double maximumInbreeding, int mostYoung, int limit) {}

    /** A ranking of a whole population holds until its journal moves on or the day ends. */
    private record Asked(UUID populationId, long head, LocalDate today, Question question) {}

    @Inject
    Ancestries ancestries;

    @Inject
    Populations populations;

    @Inject
    Keepers keepers;

    @Inject
    BreedingHolds holds;

    @Inject
    Clock clock;

    private final Cache<Asked, PairingsView> ofPopulations =
            Caffeine.newBuilder().maximumSize(64).build();

    /**
     * Partners for one animal of the asker's. Refuses with NOT_YOUR_ANIMAL for any other, and with ANIMAL_DEAD, ON_HOLD or
     * NO_CANDIDATES when it cannot be paired itself.
     */
    public PairingsView partners(Standing by, String number, Question question) {
        var snapshot = ancestries.snapshot(by);
        int row = ancestries.row(by, snapshot, number);
        var candidates = candidates(by, snapshot);
        requireOwn(by, snapshot, row);
        requirePairable(candidates, row);
        var others = candidates.living(snapshot.sex(row) == Sex.FEMALE ? Sex.MALE : Sex.FEMALE);
        var apart = IntStream.of(others)
                .filter(other -> candidates.apart(row, other))
                .toArray();
        var mature = IntStream.of(apart).filter(candidates::proposable).toArray();
        int[] self = {row};
        var pairs = snapshot.sex(row) == Sex.FEMALE
                ? rank(candidates, self, mature, (dam, sire) -> true, question)
                : rank(candidates, mature, self, (dam, sire) -> true, question);
        return view(
                snapshot.number(row),
                "one-animal",
                candidates,
                question,
                pairs,
                excluded(candidates, row, apart, question));
    }

    /**
     * The best pairs across collections: for a coordinator those of the whole population, for a member those with one
     * animal of their own. Which animals of others live together is not to be read from what is missing.
     */
    public PairingsView pairings(Standing by, Question question) {
        var snapshot = ancestries.snapshot(by);
        var candidates = candidates(by, snapshot);
        if (by.isCoordinator()) {
            var asked = new Asked(by.populationId(), snapshot.head(), candidates.today(), question);
            return ofPopulations.get(asked, same -> {
                var pairs = rank(
                        candidates,
                        candidates.proposable(Sex.FEMALE),
                        candidates.proposable(Sex.MALE),
                        candidates::apart,
                        question);
                return view(null, "population", candidates, question, pairs, List.of());
            });
        }
        var pairs = withOneOf(ownRows(by, snapshot), candidates, question);
        return view(null, "your-collections", candidates, question, pairs, List.of());
    }

    private static List<Pair> withOneOf(Set<Integer> own, Candidates candidates, Question question) {
        var females = candidates.proposable(Sex.FEMALE);
        var males = candidates.proposable(Sex.MALE);
        var ownFemales = IntStream.of(females).filter(own::contains).toArray();
        var ownMales = IntStream.of(males).filter(own::contains).toArray();
        var otherFemales =
                IntStream.of(females).filter(row -> !own.contains(row)).toArray();
        var pairs = new ArrayList<>(rank(candidates, ownFemales, males, candidates::apart, question));
        pairs.addAll(rank(candidates, otherFemales, ownMales, candidates::apart, question));
        pairs.sort(Pair.BEST_FIRST);
        return pairs.subList(0, Math.min(question.limit(), pairs.size()));
    }

    private Candidates candidates(Standing by, Snapshot snapshot) {
        return new Candidates(
                snapshot,
                LocalDate.now(clock),
                populations.get(by).profile().breeding().daysOfAgeToBreed(),
                holds.in(by, snapshot));
    }

    private void requireOwn(Standing by, Snapshot snapshot, int row) {
        if (!ownRows(by, snapshot).contains(row)) {
            throw new Refusal(
                    NOT_YOUR_ANIMAL,
                    "%s is not in a collection of yours; partners are proposed to who holds an animal."
                            .formatted(snapshot.number(row)));
        }
    }

    private Set<Integer> ownRows(Standing by, Snapshot snapshot) {
        var own = keepers.collectionIds(by);
        var rows = new HashSet<Integer>();
        for (int row = 0; row < snapshot.size(); row++) {
            if (snapshot.collection(row) != null && own.contains(snapshot.collection(row))) {
                rows.add(row);
            }
        }
        return rows;
    }

    private static void requirePairable(Candidates candidates, int row) {
        var snapshot = candidates.snapshot();
        var number = snapshot.number(row);
        if (!snapshot.alive(row)) {
            throw new Refusal(ANIMAL_DEAD, "%s is dead.".formatted(number));
        }
        if (snapshot.sex(row) == Sex.UNKNOWN) {
            throw new Refusal(
                    NO_CANDIDATES,
                    "The sex of %s is not known; have it determined and state it first.".formatted(number));
        }
        var held = candidates.held().get(row);
        if (held != null) {
            throw new Refusal(
                    ON_HOLD,
                    held.fatherless()
                            ? "%s is on hold: it has no sire, so it carries nothing that its dam lacks. Ask for partners for its dam; or ask a coordinator to lift the hold of this one."
                                    .formatted(number)
                            : "%s is %s. Lift the hold, or ask a coordinator to, before you plan with it."
                                    .formatted(number, held.words()));
        }
        if (candidates.age(row) == Age.TOO_YOUNG) {
            throw new Refusal(NO_CANDIDATES, "%s: %s.".formatted(number, tooYoung(candidates, row)));
        }
    }

    private static String tooYoung(Candidates candidates, int row) {
        var born = candidates.snapshot().bornEarliest(row);
        return born == null
                ? "too young to breed"
                : "too young to breed before " + born.plusDays(candidates.daysOfAgeToBreed());
    }

    private static List<Pair> rank(
            Candidates candidates, int[] females, int[] males, Ranking.Allowed allowed, Question question) {
        var snapshot = candidates.snapshot();
        if (snapshot.pool().isEmpty()) {
            return List.of();
        }
        return Ranking.of(
                snapshot.pedigree(),
                snapshot.pool().get(),
                females,
                males,
                allowed,
                question.maximumInbreeding(),
                question.limit());
    }

    /** The nearest relatives last; at most as many as pairs are asked for. */
    private static List<Excluded> excluded(Candidates candidates, int row, int[] others, Question question) {
        var snapshot = candidates.snapshot();
        double[][] kinship = snapshot.pedigree().kinship(others, new int[] {row});
        var excluded = new ArrayList<Excluded>();
        for (int i = 0; i < others.length; i++) {
            double f = kinship[i][0];
            var number = snapshot.number(others[i]);
            var held = candidates.held().get(others[i]);
            if (held != null) {
                excluded.add(new Excluded(number, f, held.words()));
            } else if (f > question.maximumInbreeding() + Ranking.ROUNDING) {
                excluded.add(new Excluded(
                        number,
                        f,
                        String.format(
                                Locale.ROOT,
                                "too closely related: young would have an inbreeding coefficient of %.4f, more than %.4f",
                                f,
                                question.maximumInbreeding())));
            } else if (candidates.age(others[i]) == Age.TOO_YOUNG) {
                excluded.add(new Excluded(number, f, tooYoung(candidates, others[i])));
            }
        }
        excluded.sort(Comparator.comparingDouble(Excluded::inbreedingOfYoung)); // stable: ties by number
        return excluded.subList(0, Math.min(question.limit(), excluded.size()));
    }

    private static PairingsView view(
            @Nullable String animal,
            String scope,
            Candidates candidates,
            Question question,
            List<Pair> pairs,
            List<Excluded> excluded) {
        var snapshot = candidates.snapshot();
        var advice = snapshot.pool().map(pool -> new Advice(snapshot, pool, question.mostYoung()));
        return new PairingsView(
                animal,
                scope,
                question.maximumInbreeding(),
                snapshot.pool().map(GenePool::geneDiversity).orElse(null),
                snapshot.pool().map(GenePool::meanKinship).orElse(null),
                snapshot.pedigree().convention().name().toLowerCase(Locale.ROOT),
                pairs.stream()
                        .map(pair -> advice.orElseThrow().of(pair, candidates.notes(pair.dam(), pair.sire())))
                        .toList(),
                excluded,
                snapshot.head());
    }
}
