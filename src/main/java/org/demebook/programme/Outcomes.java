package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.demebook.ancestry.Ancestries;
import org.demebook.ancestry.Snapshot;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.kinship.GenePool;
import org.demebook.kinship.Pedigree;
import org.demebook.programme.OutcomeView.Came;
import org.demebook.programme.OutcomeView.What;
import org.demebook.programme.PlanDocument.Litter;
import org.jspecify.annotations.Nullable;

/** What came of a plan, by the births that an asker may see: those of whose young they may see who the parents are. */
@ApplicationScoped
public class Outcomes {
    @Inject
    SeasonPlans plans;

    @Inject
    KeptPlans kept;

    @Inject
    Partners partners;

    @Inject
    Ancestries ancestries;

    @Inject
    Keepers keepers;

    @Inject
    Clock clock;

    /** Refuses with NO_SUCH_PLAN. O(population). */
    public OutcomeView of(Standing by, UUID planId) {
        var plan = plans.require(by, planId).document();
        var at = clock.instant();
        var telling = new Telling(
                plan,
                kept.answers(by, plan),
                ancestries.seen(by, at),
                partners.seen(by),
                keepers.collectionIds(by),
                by.isCoordinator(),
                LocalDate.now(clock));
        var view = telling.view();
        telling.seen.disclosed();
        ancestries.disclosed(
                by,
                Purpose.PEDIGREE_VIEW,
                at,
                telling.snapshot,
                telling.young.stream().mapToInt(row -> row));
        return view;
    }

    private static final class Telling {
        private final PlanDocument plan;
        private final Map<UUID, List<LitterAnswer>> answers;
        private final Snapshot snapshot;
        private final Partners.Seen seen;
        private final Set<UUID> own;
        private final boolean all;
        private final LocalDate today;
        private final Map<Integer, List<Integer>> bornTo = new HashMap<>();

        /** That the answer tells of. */
        private final List<Integer> young = new ArrayList<>();

        Telling(
                PlanDocument plan,
                Map<UUID, List<LitterAnswer>> answers,
                Snapshot snapshot,
                Partners.Seen seen,
                Set<UUID> own,
                boolean all,
                LocalDate today) {
            this.plan = plan;
            this.answers = answers;
            this.snapshot = snapshot;
            this.seen = seen;
            this.own = own;
            this.all = all;
            this.today = today;
            IntStream.range(0, snapshot.size())
                    .filter(row -> snapshot.isShown(row) && isOfTheSeason(row))
                    .forEach(row -> bornTo.computeIfAbsent(snapshot.shownDam(row), dam -> new ArrayList<>())
                            .add(row));
            bornTo.remove(Pedigree.UNKNOWN);
        }

        OutcomeView view() {
            var told = plan.litters().stream().filter(this::isTold).toList();
            var came = told.stream().map(this::came).toList();
            return new OutcomeView(
                    plan.id(),
                    all ? 1 - plan.figures().afterOfTheLiving() : null,
                    snapshot.pool().map(GenePool::geneDiversity).orElse(null),
                    told.stream().mapToDouble(litter -> litter.young().value()).sum(),
                    came.stream().mapToInt(Came::alive).sum(),
                    count(came, litter -> litter.state() == LitterState.AGREED),
                    count(came, litter -> litter.what() == What.BORN),
                    came);
        }

        private static int count(List<Came> came, Predicate<Came> which) {
            return (int) came.stream().filter(which).count();
        }

        private LocalDate aYearOn() {
            return plan.pairOn().plusYears(1);
        }

        /** It may have been born in the year that follows the day of pairing. */
        private boolean isOfTheSeason(int row) {
            var earliest = snapshot.bornEarliest(row);
            var latest = snapshot.bornLatest(row);
            return (earliest != null || latest != null)
                    && (latest == null || !latest.isBefore(plan.pairOn()))
                    && (earliest == null || !earliest.isAfter(aYearOn()));
        }

        private boolean isTold(Litter litter) {
            return isOwn(litter.damId())
                    || isOwn(litter.sireId())
                    || all && seen.sees(litter.damId()) && seen.sees(litter.sireId());
        }

        private boolean isOwn(UUID animalId) {
            int row = snapshot.row(animalId);
            return row != Pedigree.UNKNOWN
                    && snapshot.collection(row) != null
                    && own.contains(snapshot.collection(row));
        }

        private Came came(Litter litter) {
            var state = LitterState.of(answers.getOrDefault(litter.id(), List.of()));
            boolean agreed = state == LitterState.AGREED;
            var hers = bornTo.getOrDefault(snapshot.row(litter.damId()), List.of());
            var theirs = hers.stream()
                    .filter(row -> snapshot.shownSire(row) == snapshot.row(litter.sireId()))
                    .toList();
            young.addAll(theirs.isEmpty() ? hers : theirs);
            return new Came(
                    litter.id(),
                    seen.number(litter.damId(), agreed).orElse(null),
                    seen.number(litter.sireId(), agreed).orElse(null),
                    state,
                    !theirs.isEmpty()
                            ? What.BORN
                            : !hers.isEmpty() ? What.OTHER_SIRE : today.isAfter(aYearOn()) ? What.NONE : What.NOT_YET,
                    bornOn(theirs.isEmpty() ? hers : theirs),
                    theirs.size(),
                    (int) theirs.stream().filter(snapshot::alive).count());
        }

        private @Nullable LocalDate bornOn(List<Integer> rows) {
            return rows.stream()
                    .map(snapshot::bornEarliest)
                    .filter(Objects::nonNull)
                    .min(LocalDate::compareTo)
                    .orElse(null);
        }
    }
}
