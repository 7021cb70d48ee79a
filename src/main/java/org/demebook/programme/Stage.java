package org.demebook.programme;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.ancestry.Snapshot;
import org.demebook.journal.Journal;
import org.demebook.programme.PlanDocument.IfRefused;
import org.demebook.programme.Settled.Couple;
import org.demebook.season.Constraint;
import org.demebook.season.Effort;
import org.demebook.season.Pair;
import org.demebook.season.Refusal;
import org.demebook.season.Season;
import org.demebook.season.SeasonPlan;
import org.jspecify.annotations.Nullable;

/**
 * A season to be solved, and what its numbers stand for.
 *
 * @param heads of the journals that the snapshot is from
 * @param females rows of the snapshot, by the season's numbers; rows beyond it are founders that are only imagined
 * @param males likewise
 * @param living the season with every living animal counted as one; null where {@code season} is that
 * @param lost animals that are taken to be gone
 * @param placeWords by the season's collections: whose animals they are, by the number of one of them
 */
record Stage(
        Snapshot snapshot,
        Map<String, Long> heads,
        int[] females,
        int[] males,
        List<String> placeWords,
        Season season,
        @Nullable Season living,
        NewDraft asked,
        Settled settled,
        Set<UUID> lost) {

    /** An animal by its row: its number, or what an imagined one is called. */
    String name(int row) {
        return row < snapshot.size() ? snapshot.number(row) : "new founder " + (row - snapshot.size() + 1);
    }

    /** Of an imagined one none that any animal has. */
    UUID id(int row) {
        return row < snapshot.size() ? snapshot.id(row) : new UUID(0, row);
    }

    /** What an animal is called that is only imagined; empty for any other. */
    Optional<String> imagined(UUID animalId) {
        return animalId.getMostSignificantBits() == 0
                ? Optional.of(name((int) animalId.getLeastSignificantBits()))
                : Optional.empty();
    }

    /** What an animal of a plan was called when it was computed. */
    String nameOf(UUID animalId) {
        return imagined(animalId).orElseGet(() -> snapshot.number(snapshot.row(animalId)));
    }

    PlanInput.Input input() {
        return new PlanInput.Input(ids(females), ids(males), season.form(), living == null ? null : living.form());
    }

    private List<UUID> ids(int[] rows) {
        return Arrays.stream(rows).mapToObj(this::id).toList();
    }

    PlanDocument document(UUID planId, Effort effort, Composition composition) {
        var plan = composition.plan();
        return new PlanDocument(
                planId,
                asked.follows(),
                asked.pairOn(),
                heads,
                PlanInput.digest(input()),
                PlanDocument.Work.of(effort, asked),
                new Exact(asked.chance()),
                new Exact(asked.inbreedingAtMost()),
                figures(composition),
                plan.litters().stream()
                        .map(litter -> litter(litter, composition))
                        .toList(),
                curve(composition));
    }

    static List<PlanDocument.Point> curve(Composition composition) {
        return composition.curve().stream()
                .map(point -> new PlanDocument.Point(new Exact(point.meanKinship()), new Exact(point.meanInbreeding())))
                .toList();
    }

    static PlanDocument.Figures figures(Composition composition) {
        var plan = composition.plan();
        var living = composition.living();
        return new PlanDocument.Figures(
                new Exact(plan.now()),
                new Exact(plan.after()),
                new Exact(plan.settledOnly()),
                new Exact(plan.bound()),
                new Exact(plan.meanInbreeding()),
                plan.leastInbred(),
                plan.whole() && composition.complete(),
                living == null ? null : new PlanDocument.Living(new Exact(living.now()), new Exact(living.after())));
    }

    private PlanDocument.Litter litter(SeasonPlan.Litter litter, Composition composition) {
        var damId = id(females[litter.pair().female()]);
        var sireId = id(males[litter.pair().male()]);
        var known = settled.proposed().get(new Couple(damId, sireId));
        return litter(
                known == null ? Journal.newId() : known,
                damId,
                sireId,
                litter,
                composition,
                asked.youngInAll() != null);
    }

    /** The litter of a plan as it is written down. @param chosen how many young to keep is part of the plan */
    static PlanDocument.Litter litter(
            UUID id, UUID damId, UUID sireId, SeasonPlan.Litter litter, Composition composition, boolean chosen) {
        int keep = chosen ? (int) litter.young() : composition.keep().getOrDefault(litter.pair(), 0);
        return new PlanDocument.Litter(
                id,
                damId,
                sireId,
                new Exact(litter.young()),
                keep,
                new Exact(litter.inbreeding()),
                new Exact(litter.adds()),
                litter.settled(),
                ifRefused(composition.refusals().get(litter.pair())));
    }

    private static @Nullable IfRefused ifRefused(@Nullable Map<Refusal.What, Refusal> refusals) {
        return refusals == null
                ? null
                : new IfRefused(
                        cost(refusals.get(Refusal.What.THIS_PAIR)),
                        cost(refusals.get(Refusal.What.ANY_LITTER_OF_HERS)),
                        cost(refusals.get(Refusal.What.ANY_LITTER_OF_HIS)));
    }

    private static @Nullable Exact cost(@Nullable Refusal refusal) {
        return refusal == null || refusal.cost().isEmpty()
                ? null
                : new Exact(refusal.cost().getAsDouble());
    }

    /** Constraints that contradict each other, in words. */
    List<String> words(List<Constraint> constraints) {
        return constraints.stream().map(this::words).toList();
    }

    private String words(Constraint constraint) {
        if (constraint instanceof Constraint.LittersWanted wanted) {
            return wanted.litters() == 1
                    ? "1 litter is wanted, no fewer."
                    : "%d litters are wanted, no fewer.".formatted(wanted.litters());
        }
        if (constraint instanceof Constraint.LittersAtMost most) {
            return "No more than %s wanted."
                    .formatted(most.litters() == 1 ? "1 litter is" : most.litters() + " litters are");
        }
        if (constraint instanceof Constraint.LittersOfMale of) {
            return "%s may have %s at most.".formatted(name(males[of.male()]), litters(of.most()));
        }
        if (constraint instanceof Constraint.LittersOfCollection of) {
            return "The collection of %s takes %s at most."
                    .formatted(placeWords.get(of.collection()), litters(of.most()));
        }
        if (constraint instanceof Constraint.TravellersOfCollection of) {
            return "Of the collection of %s no more than %s may be away."
                    .formatted(placeWords.get(of.collection()), of.most() == 1 ? "1 male" : of.most() + " males");
        }
        if (constraint instanceof Constraint.PairLocked locked) {
            return "%s and %s are to be paired."
                    .formatted(
                            name(females[locked.pair().female()]),
                            name(males[locked.pair().male()]));
        }
        var of = (Constraint.PairsOfFemale) constraint;
        int possible = 0;
        for (int male = 0; male < males.length; male++) {
            possible += season.isAllowed(new Pair(of.female(), male)) ? 1 : 0;
        }
        return possible == 0
                ? "%s has no male that she may be paired with.".formatted(name(females[of.female()]))
                : "Of %d males %s may be paired with %d only: the others are too closely related, too far, or ruled out."
                        .formatted(males.length, name(females[of.female()]), possible);
    }

    private static String litters(int most) {
        return most == 1 ? "1 litter" : most + " litters";
    }
}
