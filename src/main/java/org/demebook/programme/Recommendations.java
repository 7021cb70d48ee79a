package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.ancestry.Ancestries;
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
    Ancestries ancestries;

    @Inject
    Keepers keepers;

    @Inject
    Populations populations;

    @Inject
    Clock clock;

    /** One for each living animal of known sex in the asker's collections, in the order of numbers; refuses with NO_SUCH_PLAN. */
    public List<RecommendationView> of(Standing by, UUID planId) {
        var plan = plans.require(by, planId).document();
        var today = LocalDate.now(clock);
        var field = fields.of(by, plan.pairOn().isBefore(today) ? today : plan.pairOn());
        var telling = new Telling(
                plan,
                kept.answers(by, plan),
                field,
                PlanSight.of(ancestries, by, clock.instant()),
                keepers.collectionIds(by),
                plan.pairOn().minusDays(populations.get(by).profile().daysOfQuarantine()));
        var told = IntStream.of(field.snapshot().living())
                .filter(row -> telling.isYours(row) && field.snapshot().sex(row) != Sex.UNKNOWN)
                .mapToObj(telling::of)
                .toList();
        telling.sight.disclosed(ancestries, telling.partners.stream());
        return told;
    }

    /** One answer. */
    private static final class Telling {
        private final PlanDocument plan;
        private final Map<UUID, List<LitterAnswer>> answers;
        private final SeasonField field;
        private final Snapshot snapshot;
        private final PlanSight sight;
        private final Set<UUID> own;
        private final LocalDate arriveBy;
        private final Map<UUID, List<Litter>> littersOf = new HashMap<>();
        private final Map<Integer, SeasonField.Hindered> hindered = new HashMap<>();
        private final List<UUID> partners = new ArrayList<>();

        Telling(
                PlanDocument plan,
                Map<UUID, List<LitterAnswer>> answers,
                SeasonField field,
                PlanSight sight,
                Set<UUID> own,
                LocalDate arriveBy) {
            this.plan = plan;
            this.answers = answers;
            this.field = field;
            this.snapshot = field.snapshot();
            this.sight = sight;
            this.own = own;
            this.arriveBy = arriveBy;
            for (var litter : plan.litters()) {
                for (var animal : List.of(litter.damId(), litter.sireId())) {
                    littersOf.computeIfAbsent(animal, id -> new ArrayList<>()).add(litter);
                }
            }
            field.hindered().forEach(each -> hindered.put(each.row(), each));
        }

        boolean isYours(int row) {
            return row != Pedigree.UNKNOWN
                    && snapshot.collection(row) != null
                    && own.contains(snapshot.collection(row));
        }

        RecommendationView of(int row) {
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
                        litters);
            }
            if (still.isEmpty()) {
                return new RecommendationView(
                        snapshot.number(row),
                        Doing.REST,
                        litters.isEmpty() ? notInThePlan(row) : notThisYear(row),
                        litters);
            }
            boolean moves =
                    snapshot.sex(row) == Sex.MALE && still.stream().anyMatch(litter -> litter.arriveBy() != null);
            return new RecommendationView(
                    snapshot.number(row),
                    moves ? Doing.MOVE : Doing.BREED,
                    String.join(
                            " ",
                            still.stream().map(litter -> words(row, litter)).toList()),
                    litters);
        }

        private Yours yours(int row, Litter litter) {
            boolean dam = litter.damId().equals(snapshot.id(row));
            var partnerId = dam ? litter.sireId() : litter.damId();
            int partner = snapshot.row(partnerId);
            var number = sight.number(partnerId);
            if (number.isPresent()) {
                partners.add(partnerId);
            }
            var said = answers.getOrDefault(litter.id(), List.of());
            var mine = (dam ? Side.DAM : Side.SIRE).word();
            return new Yours(
                    litter.id(),
                    number.orElse(null),
                    litter.keep(),
                    number.isPresent() ? inbreeding(row, partner) : null,
                    plan.pairOn(),
                    isYours(partner) && snapshot.collection(partner).equals(snapshot.collection(row)) ? null : arriveBy,
                    LitterState.of(said),
                    said.stream()
                            .filter(answer -> answer.side.equals(mine))
                            .map(answer -> answer.answer)
                            .findFirst()
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

        private String notThisYear(int row) {
            return "%s has no litter this year: what was proposed is not to be.".formatted(snapshot.number(row));
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
