package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.demebook.ancestry.Snapshot;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Sex;
import org.demebook.planning.Hindrance;
import org.demebook.planning.SeasonField;
import org.demebook.planning.SeasonFields;
import org.demebook.programme.PlanDocument.Litter;
import org.demebook.programme.RecommendationView.Doing;
import org.demebook.programme.RecommendationView.Instead;
import org.demebook.programme.RecommendationView.Yours;
import org.demebook.registry.Populations;
import org.jspecify.annotations.Nullable;

/**
 * What a plan says to a keeper of their own animals. Of the other animal no more is told than they may see by themselves, of its
 * keeper's answer no more than whether there is to be a litter.
 */
@ApplicationScoped
public class Recommendations {
    @Inject
    SeasonPlans plans;

    @Inject
    KeptPlans kept;

    @Inject
    SeasonFields fields;

    @Inject
    Keepers keepers;

    @Inject
    Populations populations;

    @Inject
    Partners partners;

    @Inject
    Clock clock;

    /** One for each living animal of known sex in the asker's collections, in the order of numbers; refuses with NO_SUCH_PLAN. */
    public List<RecommendationView> of(Standing by, UUID planId) {
        var plan = plans.require(by, planId).document();
        var today = LocalDate.now(clock);
        var pairOn = plan.pairOn().isBefore(today) ? today : plan.pairOn();
        var telling = new Telling(
                by,
                plan,
                kept.answers(by, plan),
                fields.of(by, pairOn),
                partners.seen(by),
                keepers.collectionIds(by),
                plan.pairOn().minusDays(populations.get(by).profile().daysOfQuarantine()));
        var before = plan.follows() == null
                ? List.<Litter>of()
                : plans.settled(by, plan.follows()).off();
        var instead = partners.instead(
                by, telling.off(before), pairOn, plan.maximumInbreeding().value());
        var told = telling.rows()
                .mapToObj(row -> telling.of(
                        row, instead.getOrDefault(telling.field.snapshot().id(row), List.of())))
                .toList();
        telling.seen.disclosed();
        return told;
    }

    /** One answer. */
    private static final class Telling {
        private final Standing by;
        private final PlanDocument plan;
        private final Map<UUID, List<LitterAnswer>> answers;
        private final SeasonField field;
        private final Snapshot snapshot;
        private final Partners.Seen seen;
        private final Set<UUID> own;
        private final LocalDate arriveBy;
        private final Map<UUID, List<Litter>> littersOf = new HashMap<>();
        private final Map<Integer, SeasonField.Hindered> hindered = new HashMap<>();

        Telling(
                Standing by,
                PlanDocument plan,
                Map<UUID, List<LitterAnswer>> answers,
                SeasonField field,
                Partners.Seen seen,
                Set<UUID> own,
                LocalDate arriveBy) {
            this.by = by;
            this.plan = plan;
            this.answers = answers;
            this.field = field;
            this.snapshot = field.snapshot();
            this.seen = seen;
            this.own = own;
            this.arriveBy = arriveBy;
            for (var litter : plan.litters()) {
                for (var animal : List.of(litter.damId(), litter.sireId())) {
                    littersOf.computeIfAbsent(animal, id -> new ArrayList<>()).add(litter);
                }
            }
            field.hindered().forEach(each -> hindered.put(each.row(), each));
        }

        IntStream rows() {
            return IntStream.of(snapshot.living()).filter(row -> isYours(row) && snapshot.sex(row) != Sex.UNKNOWN);
        }

        /**
         * The reader's animals for which another partner is to be named, each with those that are none for it: of a pair that is off, and that
         * are agreed elsewhere as far as the reader is told. Not one that its own keeper said cannot, or later.
         *
         * @param before litters of earlier plans that are off
         */
        Map<UUID, Set<UUID>> off(List<Litter> before) {
            var taken = plan.litters().stream()
                    .filter(litter -> state(litter) == LitterState.AGREED && isTold(litter))
                    .flatMap(litter -> Stream.of(litter.damId(), litter.sireId()))
                    .collect(Collectors.toSet());
            var off = new HashMap<UUID, Set<UUID>>();
            rows().forEach(row -> {
                var id = snapshot.id(row);
                var litters = littersOf.getOrDefault(id, List.of());
                var not = litters.stream()
                        .filter(litter -> state(litter) == LitterState.NOT_THIS_YEAR)
                        .toList();
                boolean isOut = litters.stream()
                        .flatMap(litter -> said(litter, side(id, litter)).stream())
                        .anyMatch(said -> said.answer == Answer.CANNOT || said.answer == Answer.LATER);
                boolean hasAnother = snapshot.sex(row) == Sex.FEMALE && not.size() < litters.size();
                if (!not.isEmpty() && !isOut && !hasAnother) {
                    var without = new HashSet<>(taken);
                    Stream.concat(not.stream(), before.stream().filter(litter -> isOf(id, litter)))
                            .forEach(litter ->
                                    without.add(side(id, litter).other().animalOf(litter)));
                    off.put(id, without);
                }
            });
            return off;
        }

        /** Whether the reader is told what became of a litter: of their own animals, and coordinators of those that they may see. */
        private boolean isTold(Litter litter) {
            return isYours(snapshot.row(litter.damId()))
                    || isYours(snapshot.row(litter.sireId()))
                    || by.isCoordinator() && seen.sees(litter.damId()) && seen.sees(litter.sireId());
        }

        private LitterState state(Litter litter) {
            return LitterState.of(answers.getOrDefault(litter.id(), List.of()));
        }

        private static boolean isOf(UUID animalId, Litter litter) {
            return litter.damId().equals(animalId) || litter.sireId().equals(animalId);
        }

        private static Side side(UUID animalId, Litter litter) {
            return litter.damId().equals(animalId) ? Side.DAM : Side.SIRE;
        }

        private Optional<LitterAnswer> said(Litter litter, Side side) {
            return answers.getOrDefault(litter.id(), List.of()).stream()
                    .filter(answer -> answer.side() == side)
                    .findFirst();
        }

        boolean isYours(int row) {
            return row != Pedigree.UNKNOWN
                    && snapshot.collection(row) != null
                    && own.contains(snapshot.collection(row));
        }

        RecommendationView of(int row, List<Instead> instead) {
            var litters = littersOf.getOrDefault(snapshot.id(row), List.of()).stream()
                    .map(litter -> yours(row, litter))
                    .toList();
            var still = litters.stream()
                    .filter(litter -> litter.state() != LitterState.NOT_THIS_YEAR)
                    .toList();
            var inTheWay = hindered.get(row);
            if (inTheWay != null) {
                return new RecommendationView(
                        snapshot.number(row),
                        inTheWay.hindrance() == Hindrance.RESTS ? Doing.REST : Doing.HOLD,
                        "%s: %s.".formatted(snapshot.number(row), inTheWay.words()),
                        litters,
                        List.of());
            }
            if (still.isEmpty()) {
                return new RecommendationView(
                        snapshot.number(row),
                        Doing.REST,
                        litters.isEmpty() ? notInThePlan(row) : notThisYear(row, instead),
                        litters,
                        instead);
            }
            boolean moves =
                    snapshot.sex(row) == Sex.MALE && still.stream().anyMatch(litter -> litter.arriveBy() != null);
            return new RecommendationView(
                    snapshot.number(row),
                    moves ? Doing.MOVE : Doing.BREED,
                    String.join(
                            " ",
                            still.stream().map(litter -> words(row, litter)).toList()),
                    litters,
                    instead);
        }

        private Yours yours(int row, Litter litter) {
            var side = side(snapshot.id(row), litter);
            var partnerId = side.other().animalOf(litter);
            int partner = snapshot.row(partnerId);
            var state = state(litter);
            var number = seen.number(partnerId, state == LitterState.AGREED);
            var where = state == LitterState.AGREED ? seen.whereabouts(partnerId) : Partners.Whereabouts.NOT_SHOWN;
            var mine = said(litter, side);
            return new Yours(
                    litter.id(),
                    number.orElse(null),
                    litter.keep(),
                    number.isPresent() ? inbreeding(row, partner) : null,
                    plan.pairOn(),
                    isYours(partner) && snapshot.collection(partner).equals(snapshot.collection(row)) ? null : arriveBy,
                    state,
                    where.collection(),
                    where.keepers(),
                    mine.map(answer -> answer.answer).orElse(null),
                    mine.map(answer -> answer.reason).orElse(null),
                    mine.filter(answer -> answer.answeredBy.equals(by.keeperId()))
                            .map(answer -> answer.note)
                            .orElse(null));
        }

        /** As /pairings has it: only where the reader sees both. */
        private @Nullable Double inbreeding(int row, int partner) {
            return partner != Pedigree.UNKNOWN && snapshot.isShown(partner) && snapshot.isParentageShown(partner)
                    ? snapshot.pedigree().kinship(row, partner)
                    : null;
        }

        private String words(int row, Yours litter) {
            var partner =
                    litter.partner() == null ? "an animal that its keeper does not show to you" : litter.partner();
            var where = litter.arriveBy() == null
                    ? "both live with you"
                    : snapshot.sex(row) == Sex.MALE
                            ? "he moves to her keeper and arrives by %s".formatted(litter.arriveBy())
                            : "he comes to you and arrives by %s".formatted(litter.arriveBy());
            return "Pair %s with %s on %s; %s. %s"
                    .formatted(snapshot.number(row), partner, litter.pairOn(), where, PlanViews.keep(litter.keep()));
        }

        private String notThisYear(int row, List<Instead> instead) {
            var words = "%s has no litter this year: what was proposed is not to be.".formatted(snapshot.number(row));
            return instead.isEmpty()
                    ? words
                    : "%s Next best by what you may see: %s. Ask a coordinator to plan anew."
                            .formatted(
                                    words,
                                    instead.stream().map(Instead::partner).collect(Collectors.joining(", ")));
        }

        private String notInThePlan(int row) {
            var number = snapshot.number(row);
            var pool = snapshot.pool();
            if (pool.isPresent() && pool.get().meanKinship(row) > pool.get().meanKinship()) {
                return "%s rests this season: its genes are common in the population (mean kinship %s, of all %s), and litters of others keep more."
                        .formatted(
                                number,
                                PlanViews.figure(pool.get().meanKinship(row)),
                                PlanViews.figure(pool.get().meanKinship()));
            }
            return "%s rests this season: the plan needs no litter of it, or has no partner for it.".formatted(number);
        }
    }
}
