package org.demebook.programme;

import static org.demebook.problem.ProblemType.NO_CANDIDATES;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;
import org.demebook.planning.SeasonField;
import org.demebook.planning.SeasonFields;
import org.demebook.problem.Refusal;
import org.demebook.programme.NewDraft.Two;
import org.demebook.registry.Populations;
import org.demebook.season.Season;
import org.demebook.season.SeasonBuilder;
import org.demebook.season.StayWeight;
import org.jspecify.annotations.Nullable;

/** Makes a season of what may breed and of what is asked. */
@ApplicationScoped
class Stages {
    /** What solves in half a minute; of more, those of the least mean kinship are planned with. */
    static final int MOST_OF_A_SEX = 300;

    private static final double DAYS_OF_A_YEAR = 365.25;

    @Inject
    SeasonFields fields;

    @Inject
    Ancestries ancestries;

    @Inject
    Populations populations;

    @Inject
    Journal journal;

    /**
     * Refuses with NO_CANDIDATES where there is no female or no male left, or a pair that is asked for cannot be; with
     * NO_SUCH_ANIMAL or MISTYPED_NUMBER for a number that the asker does not know.
     */
    Stage of(Standing by, NewDraft asked, Settled settled) {
        var field = fields.of(by, asked.pairOn());
        return new Making(by, field, asked, settled).stage();
    }

    private final class Making {
        private final Standing by;
        private final SeasonField field;
        private final Snapshot snapshot;
        private final NewDraft asked;
        private final Settled settled;
        private final Map<Integer, Integer> placeOf = new HashMap<>();
        private final int daysOfLife;
        private final BitSet lost;
        private final Pedigree pedigree;
        private final int[] females;
        private final int[] males;
        private final Map<Integer, Integer> femaleOf = new HashMap<>();
        private final Map<Integer, Integer> maleOf = new HashMap<>();

        Making(Standing by, SeasonField field, NewDraft asked, Settled settled) {
            this.by = by;
            this.field = field;
            this.snapshot = field.snapshot();
            this.asked = asked;
            this.settled = settled;
            this.daysOfLife = populations.get(by).profile().breeding().daysOfAgeAtLastLitter();
            allCandidates().forEach(candidate -> placeOf.put(candidate.row(), candidate.place()));
            field.hindered().forEach(hindered -> placeOf.put(hindered.row(), hindered.place()));
            this.lost = lost();
            this.pedigree = withNewFounders();
            int size = snapshot.size();
            var out = out();
            this.females = IntStream.concat(
                            candidates(field.females(), out), IntStream.range(size, size + asked.femaleFounders()))
                    .toArray();
            this.males = IntStream.concat(
                            candidates(field.males(), out),
                            IntStream.range(size + asked.femaleFounders(), pedigree.size()))
                    .toArray();
            IntStream.range(0, females.length).forEach(at -> femaleOf.put(females[at], at));
            IntStream.range(0, males.length).forEach(at -> maleOf.put(males[at], at));
        }

        Stage stage() {
            if (females.length == 0 || males.length == 0) {
                throw new Refusal(
                        NO_CANDIDATES,
                        "There is no %s that may breed on %s and whose keeper grants it to be planned with. Ask keepers to share number and parentage for pairing, or look at what stands in the way of each animal."
                                .formatted(females.length == 0 ? "female" : "male", asked.pairOn()));
            }
            var placeWords = new ArrayList<String>();
            var living = season(Season.of(pedigree, pedigree.pool(pool()), females, males), placeWords);
            var ahead = asked.looksAhead() ? weighed() : null;
            return new Stage(
                    snapshot,
                    Map.of(by.populationCode() + "@" + journal.nodeCode(), snapshot.head()),
                    females,
                    males,
                    placeWords,
                    ahead == null ? living : season(ahead, new ArrayList<>()),
                    ahead == null ? null : living,
                    asked,
                    settled,
                    lost.stream().mapToObj(snapshot::id).collect(Collectors.toUnmodifiableSet()));
        }

        /** With those who will soon be too old counted for less; null where nobody is, or nobody would count. */
        private @Nullable SeasonBuilder weighed() {
            int[] pool = pool();
            double[] weights = IntStream.of(pool).mapToDouble(this::weight).toArray();
            return DoubleStream.of(weights).allMatch(weight -> weight == 1)
                            || DoubleStream.of(weights).allMatch(weight -> weight == 0)
                    ? null
                    : Season.of(pedigree, pool, weights, females, males);
        }

        /** Of one whose age is not known, or not shown to the asker, as of a young. */
        private double weight(int row) {
            var born = row < snapshot.size() && snapshot.isShown(row) ? snapshot.bornLatest(row) : null;
            if (born == null) {
                return 1;
            }
            double left =
                    (born.plusDays(daysOfLife).toEpochDay() - asked.pairOn().toEpochDay()) / DAYS_OF_A_YEAR;
            return StayWeight.of(Math.max(0, Math.floor(left)), Math.max(1, daysOfLife / DAYS_OF_A_YEAR));
        }

        private Season season(SeasonBuilder builder, List<String> placeWords) {
            builder.inbreedingAtMost(asked.inbreedingAtMost());
            for (int female = 0; female < females.length; female++) {
                builder.young(female, asked.chance() * asked.young());
            }
            for (int male = 0; male < males.length; male++) {
                builder.littersOfMale(male, asked.littersOfAMale());
            }
            placeWords.addAll(places(builder));
            pairs(builder);
            if (asked.litters() != null) {
                builder.litters(asked.litters());
            } else {
                builder.littersAtMost(
                        asked.littersAtMost() == null
                                ? Math.max(1, snapshot.living().length / 4)
                                : asked.littersAtMost());
            }
            return builder.build();
        }

        /** Rows of those that would be gone, with all that are known to live with them. */
        private BitSet lost() {
            var gone = new BitSet();
            for (var number : asked.animalsLost()) {
                int row = ancestries.row(by, snapshot, number);
                gone.set(row);
                placeOf.forEach((other, place) -> {
                    if (place.equals(placeOf.get(row))) {
                        gone.set(other);
                    }
                });
            }
            return gone;
        }

        private Set<UUID> out() {
            var out = new HashSet<>(settled.out());
            asked.animalsLeftOut().forEach(number -> out.add(snapshot.id(ancestries.row(by, snapshot, number))));
            return out;
        }

        private IntStream candidates(List<SeasonField.Candidate> all, Set<UUID> out) {
            var stay = new HashSet<UUID>();
            settled.agreed().forEach(litter -> stay.addAll(List.of(litter.damId(), litter.sireId())));
            int[] able = all.stream()
                    .mapToInt(SeasonField.Candidate::row)
                    .filter(row -> !lost.get(row))
                    .filter(row -> stay.contains(snapshot.id(row))
                            || !out.contains(snapshot.id(row))
                                    && snapshot.pedigree().knownFraction(row) >= asked.knownAtLeast())
                    .toArray();
            if (able.length <= MOST_OF_A_SEX) {
                return IntStream.of(able);
            }
            asked.pairsTogether().forEach(two -> Stream.of(two.dam(), two.sire())
                    .forEach(number -> stay.add(snapshot.id(ancestries.row(by, snapshot, number)))));
            return rarest(able, stay).sorted();
        }

        /** Those that have to be there, and of the others those of the least mean kinship. */
        private IntStream rarest(int[] rows, Set<UUID> stay) {
            var living = snapshot.pool().orElseThrow();
            return IntStream.of(rows)
                    .boxed()
                    .sorted(Comparator.comparing((Integer row) -> !stay.contains(snapshot.id(row)))
                            .thenComparingDouble(living::meanKinship)
                            .thenComparing(Comparator.naturalOrder()))
                    .limit(MOST_OF_A_SEX)
                    .mapToInt(Integer::intValue);
        }

        private Pedigree withNewFounders() {
            int founders = asked.femaleFounders() + asked.maleFounders();
            if (founders == 0) {
                return snapshot.pedigree();
            }
            var builder = snapshot.pedigree().extended(founders);
            IntStream.range(snapshot.size(), snapshot.size() + founders).forEach(builder::founder);
            return builder.build();
        }

        private int[] pool() {
            return IntStream.concat(
                            IntStream.of(snapshot.living()).filter(row -> !lost.get(row)),
                            IntStream.range(snapshot.size(), pedigree.size()))
                    .toArray();
        }

        /** New founders live with nobody. Returns an animal of each place, to call it by. */
        private List<String> places(SeasonBuilder builder) {
            int real = field.places().size();
            int founders = pedigree.size() - snapshot.size();
            builder.collections(real + founders);
            var words = new ArrayList<String>(Collections.nCopies(real + founders, "an animal"));
            placeOf.forEach((row, place) -> words.set(place, name(row)));
            IntStream.range(0, founders).forEach(at -> placeOf.put(snapshot.size() + at, real + at));
            for (int place = 0; place < real; place++) {
                var limits = field.places().get(place);
                if (limits.littersAtMost() != null) {
                    builder.littersOfCollection(place, limits.littersAtMost());
                }
                if (limits.malesAwayAtMost() != null) {
                    builder.travellersOfCollection(place, limits.malesAwayAtMost());
                }
            }
            for (var capacity : asked.capacities()) {
                int row = ancestries.row(by, snapshot, capacity.animal());
                var place = placeOf.get(row);
                if (place == null) {
                    throw new Refusal(
                            NO_CANDIDATES,
                            "Where %s lives is not granted to be planned with; name another animal of that collection."
                                    .formatted(snapshot.number(row)));
                }
                builder.littersOfCollection(place, capacity.litters());
            }
            for (int female = 0; female < females.length; female++) {
                builder.femaleLivesIn(female, placeOf.get(females[female]));
            }
            for (int male = 0; male < males.length; male++) {
                builder.maleLivesIn(male, placeOf.get(males[male]));
            }
            for (int female = 0; female < females.length; female++) {
                for (int male = 0; male < males.length; male++) {
                    int hers = placeOf.get(females[female]);
                    int his = placeOf.get(males[male]);
                    if (hers < real
                            && his < real
                            && hers != his
                            && field.barrier(his, hers).isPresent()) {
                        builder.refuse(female, male);
                    }
                }
            }
            return words;
        }

        private String name(int row) {
            return row < snapshot.size() ? snapshot.number(row) : "a new founder";
        }

        private List<SeasonField.Candidate> allCandidates() {
            var all = new ArrayList<>(field.females());
            all.addAll(field.males());
            return all;
        }

        private void pairs(SeasonBuilder builder) {
            for (var litter : settled.off()) {
                var female = femaleOf.get(snapshot.row(litter.damId()));
                var male = maleOf.get(snapshot.row(litter.sireId()));
                if (female != null && male != null) {
                    builder.refuse(female, male);
                }
            }
            var locked = new LinkedHashSet<List<Integer>>();
            for (var litter : settled.agreed()) {
                var female = femaleOf.get(snapshot.row(litter.damId()));
                var male = maleOf.get(snapshot.row(litter.sireId()));
                // one that died since, or is lost in what is only looked at, has no litter any more
                if (female != null && male != null) {
                    locked.add(List.of(female, male));
                }
            }
            asked.pairsTogether().forEach(two -> locked.add(List.of(female(two), male(two))));
            locked.forEach(pair -> builder.allow(pair.get(0), pair.get(1)).lock(pair.get(0), pair.get(1)));
            // last: who wants a pair both together and apart is told so
            asked.pairsApart().forEach(two -> builder.refuse(female(two), male(two)));
        }

        private String hindrance(int row) {
            return field.inTheWay(row).map(words -> ": " + words).orElse("");
        }

        private int female(Two two) {
            return number(femaleOf, two.dam(), "female");
        }

        private int male(Two two) {
            return number(maleOf, two.sire(), "male");
        }

        private int number(Map<Integer, Integer> numbers, String typed, String sex) {
            int row = ancestries.row(by, snapshot, typed);
            var number = numbers.get(row);
            if (number == null) {
                throw new Refusal(
                        NO_CANDIDATES,
                        "%s is no %s that may breed in this season%s."
                                .formatted(snapshot.number(row), sex, hindrance(row)));
            }
            return number;
        }
    }
}
