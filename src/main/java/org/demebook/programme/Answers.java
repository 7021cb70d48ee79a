package org.demebook.programme;

import static org.demebook.problem.ProblemType.ANIMAL_DEAD;
import static org.demebook.problem.ProblemType.INVALID_VALUES;
import static org.demebook.problem.ProblemType.NO_SUCH_PROPOSAL;
import static org.demebook.problem.ProblemType.PLAN_NOT_IN_FORCE;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Refusal;
import org.demebook.programme.PlanDocument.Litter;
import org.demebook.programme.ProgrammeFacts.SeasonLitterAnswered;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;

/**
 * What keepers answer to the litters of the plan in force. Whoever acts for the collection that holds the dam or the sire now
 * answers for that side, who holds both for both; to everybody else, coordinators among them, there is no such litter.
 */
@ApplicationScoped
public class Answers {
    @Inject
    Journal journal;

    @Inject
    KeptPlans kept;

    @Inject
    SeasonPlans plans;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Inject
    Agreements agreements;

    /** A litter with what was said of it and who holds its animals. */
    private record Proposed(UUID planId, Litter litter, Map<Side, Custody> animals, Map<Side, LitterAnswer> said) {
        List<LitterAnswer> answers() {
            return List.copyOf(said.values());
        }
    }

    /**
     * Takes an answer in the place of the one before; the same again changes nothing. Refuses with INVALID_VALUES a reason that does not go
     * with the answer, with NO_SUCH_PLAN, PLAN_NOT_IN_FORCE or NO_SUCH_PROPOSAL, and with ANIMAL_DEAD to accept for one that is dead.
     */
    @Transactional
    public AnswerView give(Standing by, UUID planId, UUID litterId, NewAnswer sent) {
        requireItsReason(sent);
        journal.open(by.populationId());
        var own = keepers.collectionIds(by);
        var plan = inForce(by, planId);
        // of all animals of the plan, so that a litter of others costs what one costs that is not there
        var custodies =
                animals.custodies(by.populationId(), PlanDocument.animals(plan).collect(Collectors.toSet()));
        var sides = new ArrayList<Side>();
        plan.litter(litterId).ifPresent(litter -> Arrays.stream(Side.values())
                .filter(side -> isOf(own, custodies.get(side.animalOf(litter))))
                .forEach(sides::add));
        if (sides.isEmpty()) {
            throw new Refusal(
                    NO_SUCH_PROPOSAL,
                    "The plan proposes no litter with the id %s for an animal that lives with you; look at its recommendations."
                            .formatted(litterId));
        }
        var proposed = proposed(by, planId, plan.litter(litterId).orElseThrow(), custodies);
        sides.forEach(side -> requireAlive(proposed.animals.get(side), sent));
        sides.forEach(side -> say(by, proposed, side, sent));
        return view(by, proposed.litter, sides.get(0));
    }

    private static void requireItsReason(NewAnswer sent) {
        if (!sent.hasItsReason()) {
            var reasons = Arrays.stream(AnswerReason.values())
                    .filter(reason -> reason.isFor(sent.answer()))
                    .map(AnswerReason::word)
                    .collect(Collectors.joining(", "));
            throw new Refusal(
                    INVALID_VALUES,
                    reasons.isEmpty()
                            ? "Who accepts gives no reason; leave it out."
                            : "The answer %s goes with one of these reasons: %s."
                                    .formatted(sent.answer().word(), reasons));
        }
    }

    private PlanDocument inForce(Standing by, UUID planId) {
        var plan = plans.require(by, planId);
        var inForce = kept.inForce(by).orElseThrow();
        if (!inForce.id.equals(planId)) {
            throw new Refusal(
                    PLAN_NOT_IN_FORCE,
                    "The plan %s is not in force any more; answer to the one that was issued on %s, %s."
                            .formatted(planId, inForce.issuedOn, inForce.id));
        }
        return plan.document();
    }

    private static Proposed proposed(Standing by, UUID planId, Litter litter, Map<UUID, Custody> custodies) {
        var held = new EnumMap<Side, Custody>(Side.class);
        for (var side : Side.values()) {
            held.put(side, custodies.get(side.animalOf(litter)));
        }
        var said = new EnumMap<Side, LitterAnswer>(Side.class);
        LitterAnswer.byLitter(by.populationId(), Set.of(litter.id()))
                .getOrDefault(litter.id(), List.of())
                .forEach(answer -> said.put(answer.side(), answer));
        return new Proposed(planId, litter, held, said);
    }

    private static boolean isOf(Set<UUID> own, Custody animal) {
        return !animal.merged() && animal.collectionId() != null && own.contains(animal.collectionId());
    }

    private static void requireAlive(Custody animal, NewAnswer sent) {
        if (sent.answer() == Answer.ACCEPT && animal.died() != null) {
            throw new Refusal(
                    ANIMAL_DEAD,
                    "%s died on %s, so it will have no litter; answer cannot, animal-dead."
                            .formatted(animal.number(), animal.died()));
        }
    }

    private void say(Standing by, Proposed proposed, Side side, NewAnswer sent) {
        var before = proposed.said.get(side);
        var animal = proposed.animals.get(side);
        boolean wasTheirs = before != null && agreements.isOfHolder(before, animal);
        if (before != null && wasTheirs && before.says(sent)) {
            return;
        }
        boolean stays = before != null && wasTheirs && before.answer == Answer.ACCEPT && sent.answer() == Answer.ACCEPT;
        var grantIds = stays ? before.grants() : again(by, proposed, side, sent);
        journal.record(
                by.populationId(),
                by.keeperId(),
                new SeasonLitterAnswered(
                        proposed.planId,
                        proposed.litter.id(),
                        side,
                        sent.answer(),
                        sent.reason(),
                        sent.words(),
                        grantIds.isEmpty() ? null : grantIds,
                        before == null ? null : before.revision));
    }

    /** What the sides gave each other ends; if both accept now, they give it anew. */
    private List<UUID> again(Standing by, Proposed proposed, Side side, NewAnswer sent) {
        var given = new ArrayList<UUID>();
        proposed.answers().forEach(answer -> given.addAll(answer.grants()));
        agreements.end(by, given);
        return sent.answer() == Answer.ACCEPT
                ? agreements.give(by, side, proposed.animals, proposed.said.get(side.other()))
                : List.of();
    }

    private static AnswerView view(Standing by, Litter litter, Side side) {
        var answers =
                LitterAnswer.byLitter(by.populationId(), Set.of(litter.id())).get(litter.id());
        var said = answers.stream()
                .filter(answer -> answer.side() == side)
                .findFirst()
                .orElseThrow();
        return new AnswerView(litter.id(), said.answer, said.reason, said.answeredOn(), LitterState.of(answers));
    }
}
