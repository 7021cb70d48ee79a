package org.demebook.planning;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.ancestry.Ancestries;
import org.demebook.consent.Consents;
import org.demebook.consent.Lens;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Standing;
import org.demebook.kinship.GenePool;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Sex;
import org.demebook.planning.PairingsView.Arrival;
import org.demebook.planning.PairingsView.Excluded;
import org.demebook.planning.Ranking.Pair;
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
     * @param pairOn the day on which they are put together; null: nobody said
     */
    public record Question(
            double maximumInbreeding,
            int mostYoung,
            int limit,
            @Nullable LocalDate pairOn) {
        private static final double USUAL_MAXIMUM_INBREEDING = 0.125;
        private static final int USUAL_YOUNG = 8;

        /** As usual, where nothing is said: 0.125, and 8 young. */
        public static Question of(
                @Nullable BigDecimal maximumInbreeding,
                @Nullable Integer mostYoung,
                int limit,
                @Nullable LocalDate pairOn) {
            return new Question(
                    maximumInbreeding == null ? USUAL_MAXIMUM_INBREEDING : maximumInbreeding.doubleValue(),
                    mostYoung == null ? USUAL_YOUNG : mostYoung,
                    limit,
                    pairOn);
        }
    }

    /** What the answers to an asker follow from: what they may see, and what of it they may be proposed. */
    private record Sight(Object snapshot, Lens.Basis basis) {}

    /** A ranking of all pairs holds until something happens that its asker may see, or the day ends. */
    private record Ranked(List<Pair> pairs, PairingsView view) {}

    private record Asked(Sight sight, Hindrances known, Places places, LocalDate pairOn, Question question) {}

    @Inject
    Ancestries ancestries;

    @Inject
    Consents consents;

    @Inject
    SeasonFields fields;

    @Inject
    Clock clock;

    private final Cache<Asked, Ranked> ofPopulations =
            Caffeine.newBuilder().maximumSize(64).build();

    /**
     * Partners for one animal of the asker's, among the animals whose keepers let them read number and parents in order to
     * pair animals; figures on the pedigree as the asker may see it or have it computed with. Refuses with NO_SUCH_ANIMAL for
     * one that they may not see, NOT_YOUR_ANIMAL for any other that is not theirs, and with ANIMAL_DEAD, ON_HOLD or NO_CANDIDATES when
     * it cannot be paired itself.
     */
    public PairingsView partners(Standing by, String number, Question question) {
        var sighted = sighted(by, question);
        var snapshot = sighted.snapshot();
        var candidates = sighted.candidates();
        int row = ancestries.row(by, snapshot, number);
        sighted.own().requirePairable(candidates, row);
        var others = candidates.living(snapshot.sex(row) == Sex.FEMALE ? Sex.MALE : Sex.FEMALE);
        var apart = IntStream.of(others)
                .filter(other -> candidates.apart(row, other))
                .toArray();
        var mature = IntStream.of(apart)
                .filter(candidates::proposable)
                .filter(other -> sighted.barrier(row, other).isEmpty())
                .toArray();
        int[] self = {row};
        var pairs = snapshot.sex(row) == Sex.FEMALE
                ? rank(candidates, self, mature, (dam, sire) -> true, question)
                : rank(candidates, mature, self, (dam, sire) -> true, question);
        disclosed(by, sighted, IntStream.concat(rows(pairs), IntStream.of(apart)), pairs);
        return view(
                snapshot.number(row), "one-animal", sighted, question, pairs, excluded(sighted, row, apart, question));
    }

    /**
     * The best partners on this node of some animals of the asker's, as {@link #partners} has them, but for some that are not to be.
     *
     * @param without for each animal those that are no partners for it, by id
     * @return by animal, the best first; of one that cannot be paired itself nothing
     */
    public Map<UUID, List<NextBest>> nextBest(Standing by, Map<UUID, Set<UUID>> without, Question question) {
        if (without.isEmpty()) {
            return Map.of();
        }
        var sighted = sighted(by, question);
        var candidates = sighted.candidates();
        var snapshot = sighted.snapshot();
        var best = new HashMap<UUID, List<NextBest>>();
        without.forEach((id, others) -> {
            int row = snapshot.row(id);
            if (row == Pedigree.UNKNOWN || !sighted.own().contains(row) || !candidates.proposable(row)) {
                return;
            }
            boolean isFemale = snapshot.sex(row) == Sex.FEMALE;
            int[] self = {row};
            var partners = IntStream.of(candidates.proposable(isFemale ? Sex.MALE : Sex.FEMALE))
                    .filter(other -> !sighted.livesElsewhere(other)
                            && sighted.mayMeet(row, other)
                            && !others.contains(snapshot.id(other)))
                    .toArray();
            var pairs = isFemale
                    ? rank(candidates, self, partners, (dam, sire) -> true, question)
                    : rank(candidates, partners, self, (dam, sire) -> true, question);
            disclosed(by, sighted, rows(pairs), pairs);
            best.put(
                    id,
                    pairs.stream()
                            .map(pair -> nextBest(sighted, pair, row, question))
                            .toList());
        });
        return best;
    }

    private static NextBest nextBest(Sighted sighted, Pair pair, int row, Question question) {
        var snapshot = sighted.snapshot();
        int other = pair.dam() == row ? pair.sire() : pair.dam();
        var advised = new Advice(sighted, snapshot.pool().orElseThrow(), question.mostYoung()).of(pair);
        return new NextBest(snapshot.id(other), snapshot.number(other), pair.kinship(), advised.keep());
    }

    /**
     * The best pairs across collections, among the same animals: for a coordinator all, for a member those with one animal of
     * their own.
     */
    public PairingsView pairings(Standing by, Question question) {
        var sighted = sighted(by, question);
        var candidates = sighted.candidates();
        if (by.isCoordinator()) {
            var sight = new Sight(sighted.snapshot().identity(), sighted.lens().basis());
            var asked = new Asked(sight, candidates.known(), sighted.places(), candidates.pairOn(), question);
            var ranked = ofPopulations.get(asked, same -> {
                var pairs = rank(
                        candidates,
                        candidates.proposable(Sex.FEMALE),
                        candidates.proposable(Sex.MALE),
                        sighted::mayMeet,
                        question);
                return new Ranked(pairs, view(null, "population", sighted, question, pairs, List.of()));
            });
            disclosed(by, sighted, rows(ranked.pairs()), ranked.pairs());
            return ranked.view();
        }
        var pairs = withOneOf(sighted, question);
        disclosed(by, sighted, rows(pairs), pairs);
        return view(null, "your-collections", sighted, question, pairs, List.of());
    }

    private static IntStream rows(List<Pair> pairs) {
        return pairs.stream().flatMapToInt(pair -> IntStream.of(pair.dam(), pair.sire()));
    }

    /** @param told of which something is said of tests, and of how far away they are */
    private void disclosed(Standing by, Sighted sighted, IntStream told, List<Pair> pairs) {
        var at = clock.instant();
        ancestries.disclosed(by, Purpose.PAIRING_COMPUTATION, at, sighted.snapshot(), rows(pairs));
        var lens = consents.lens(by, Purpose.PAIRING_COMPUTATION, at);
        sighted.lookAgain(lens, told);
        consents.disclosed(lens);
    }

    private static List<Pair> withOneOf(Sighted sighted, Question question) {
        var own = sighted.own().rows();
        var candidates = sighted.candidates();
        var females = candidates.proposable(Sex.FEMALE);
        var males = candidates.proposable(Sex.MALE);
        var ownFemales = IntStream.of(females).filter(own::contains).toArray();
        var ownMales = IntStream.of(males).filter(own::contains).toArray();
        var otherFemales =
                IntStream.of(females).filter(row -> !own.contains(row)).toArray();
        var pairs = new ArrayList<>(rank(candidates, ownFemales, males, sighted::mayMeet, question));
        pairs.addAll(rank(candidates, otherFemales, ownMales, sighted::mayMeet, question));
        pairs.sort(Pair.BEST_FIRST);
        return pairs.subList(0, Math.min(question.limit(), pairs.size()));
    }

    private Sighted sighted(Standing by, Question question) {
        return fields.sighted(by, Objects.requireNonNullElseGet(question.pairOn(), () -> LocalDate.now(clock)));
    }

    private @Nullable Arrival arrival(Sighted sighted, Question question) {
        return question.pairOn() == null
                ? null
                : Arrival.before(question.pairOn(), sighted.profile().daysOfQuarantine(), LocalDate.now(clock));
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
    private static List<Excluded> excluded(Sighted sighted, int row, int[] others, Question question) {
        var candidates = sighted.candidates();
        var snapshot = candidates.snapshot();
        double[][] kinship = snapshot.pedigree().kinship(others, new int[] {row});
        var excluded = new ArrayList<Excluded>();
        for (int i = 0; i < others.length; i++) {
            double f = kinship[i][0];
            var number = snapshot.number(others[i]);
            var objection = candidates.objection(others[i]);
            boolean isHeld = objection.stream().anyMatch(of -> of.hindrance() == Hindrance.ON_HOLD);
            if (isHeld) {
                excluded.add(new Excluded(number, f, objection.get().words()));
            } else if (f > question.maximumInbreeding() + Ranking.ROUNDING) {
                excluded.add(new Excluded(
                        number,
                        f,
                        String.format(
                                Locale.ROOT,
                                "too closely related: young would have an inbreeding coefficient of %.4f, more than %.4f",
                                f,
                                question.maximumInbreeding())));
            } else if (objection.isPresent()) {
                excluded.add(new Excluded(number, f, objection.get().words()));
            } else {
                sighted.barrier(row, others[i])
                        .ifPresent(barrier -> excluded.add(new Excluded(number, f, barrier.words())));
            }
        }
        excluded.sort(Comparator.comparingDouble(Excluded::inbreedingOfYoung)); // stable: ties by number
        return excluded.subList(0, Math.min(question.limit(), excluded.size()));
    }

    private PairingsView view(
            @Nullable String animal,
            String scope,
            Sighted sighted,
            Question question,
            List<Pair> pairs,
            List<Excluded> excluded) {
        var snapshot = sighted.snapshot();
        var advice = snapshot.pool().map(pool -> new Advice(sighted, pool, question.mostYoung()));
        return new PairingsView(
                animal,
                scope,
                question.maximumInbreeding(),
                snapshot.pool().map(GenePool::geneDiversity).orElse(null),
                snapshot.pool().map(GenePool::meanKinship).orElse(null),
                snapshot.pedigree().convention().name().toLowerCase(Locale.ROOT),
                pairs.stream().map(pair -> advice.orElseThrow().of(pair)).toList(),
                excluded,
                arrival(sighted, question),
                snapshot.poolRestsOnWhatIsNotShown() ? true : null);
    }
}
