package org.demebook.programme;

import static org.demebook.problem.ProblemType.DRAFT_NOT_READY;
import static org.demebook.problem.ProblemType.NO_SUCH_PLAN;
import static org.demebook.problem.ProblemType.PLAN_INPUT_GONE;
import static org.demebook.problem.ProblemType.PLAN_OUTDATED;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Optional;
import java.util.UUID;
import org.demebook.ancestry.Ancestries;
import org.demebook.journal.Journal;
import org.demebook.keeper.Standing;
import org.demebook.planning.SeasonFields;
import org.demebook.problem.Refusal;
import org.demebook.programme.ProgrammeFacts.SeasonPlanIssued;
import org.demebook.rest.Page;
import org.jspecify.annotations.Nullable;

/** The plans of a population that were issued. The last one is in force; none is ever changed. */
@ApplicationScoped
public class SeasonPlans {
    @Inject
    Drafts drafts;

    @Inject
    Solving solving;

    @Inject
    KeptPlans kept;

    @Inject
    SeasonFields fields;

    @Inject
    Ancestries ancestries;

    @Inject
    Journal journal;

    @Inject
    Clock clock;

    /**
     * Issues a draft of the asker's: from now on it is in force. Refuses with NO_SUCH_DRAFT, with DRAFT_NOT_READY one that has no plan or
     * animals that do not exist, and with PLAN_OUTDATED one of whose animals can breed no longer.
     */
    @Transactional
    public SeasonPlanView issue(Standing by, UUID draftId) {
        var draft = drafts.require(by, draftId);
        var plan = draft.plan();
        if (plan == null || !draft.state().isOver()) {
            throw new Refusal(
                    DRAFT_NOT_READY,
                    plan == null
                            ? "The draft %s has no plan to issue; it is %s."
                                    .formatted(draftId, draft.state().word())
                            : "The draft %s is still being computed; wait, or stop it first.".formatted(draftId));
        }
        if (draft.isImagined()) {
            throw new Refusal(
                    DRAFT_NOT_READY,
                    "The draft %s has founders that do not exist; have one computed without them.".formatted(draftId));
        }
        requireStillPossible(by, draft, plan);
        journal.open(by.populationId());
        if (kept.find(by, plan.id()).isEmpty()) {
            kept.keepInput(by, draft.stage.input());
            journal.record(by.populationId(), by.keeperId(), new SeasonPlanIssued(plan));
        }
        return view(by, kept.find(by, plan.id()).orElseThrow());
    }

    /** The animals are as they were taken to be: alive, able, and granted to be planned with. */
    private void requireStillPossible(Standing by, Draft draft, PlanDocument plan) {
        var field = fields.of(by, plan.pairOn());
        var able = new HashSet<UUID>();
        field.females().forEach(candidate -> able.add(field.snapshot().id(candidate.row())));
        field.males().forEach(candidate -> able.add(field.snapshot().id(candidate.row())));
        for (var litter : plan.litters()) {
            if (!able.contains(litter.damId()) || !able.contains(litter.sireId())) {
                throw new Refusal(
                        PLAN_OUTDATED,
                        "Since the draft was computed something happened to an animal of it: %s. Have it computed again."
                                .formatted(
                                        able.contains(litter.damId())
                                                ? draft.stage.nameOf(litter.sireId())
                                                : draft.stage.nameOf(litter.damId())));
            }
        }
    }

    /** For coordinators; refuses with NO_SUCH_PLAN, and everybody else with NOT_ALLOWED. */
    public SeasonPlanView get(Standing by, UUID id) {
        Drafts.requireCoordinator(by);
        return view(by, require(by, id));
    }

    private SeasonPlanView view(Standing by, IssuedPlan issued) {
        var plan = issued.document();
        var sight = PlanSight.of(ancestries, by, clock.instant());
        sight.disclosed(ancestries, PlanDocument.animals(plan));
        var latest = kept.inForce(by).map(other -> other.id.equals(issued.id)).orElse(false);
        return new PlanViews(sight::number, kept.answers(by, plan)).of(plan, issued, latest);
    }

    IssuedPlan require(Standing by, UUID id) {
        return kept.find(by, id)
                .orElseThrow(() -> new Refusal(NO_SUCH_PLAN, "There is no plan with the id %s.".formatted(id)));
    }

    Optional<PlanDocument> inForce(Standing by) {
        return kept.inForce(by).map(IssuedPlan::document);
    }

    /** All plans, the latest first, with nothing of what they hold: for every member. */
    public Page<PlanHeadingView> page(Standing by, @Nullable String after, int limit) {
        var read = kept.page(by, after == null ? Long.MAX_VALUE : Page.number(after), limit + 1);
        var inForce = kept.inForce(by).map(plan -> plan.id).orElse(null);
        var page = Page.of(read, limit, plan -> Long.toString(plan.revision));
        return new Page<>(
                page.items().stream().map(plan -> heading(plan, inForce)).toList(), page.next());
    }

    /** The same of one plan; refuses with NO_SUCH_PLAN. */
    public PlanHeadingView heading(Standing by, UUID id) {
        return heading(require(by, id), kept.inForce(by).map(plan -> plan.id).orElse(null));
    }

    /** The same of the plan in force; empty while there is none. */
    public Optional<PlanHeadingView> headingInForce(Standing by) {
        return kept.inForce(by).map(plan -> heading(plan, plan.id));
    }

    private static PlanHeadingView heading(IssuedPlan plan, @Nullable UUID inForce) {
        return new PlanHeadingView(plan.id, plan.follows, plan.issuedOn, plan.pairOn, plan.id.equals(inForce));
    }

    /** What answers to a plan, and to those that it follows, mean for the next one. */
    Settled settled(Standing by, UUID planId) {
        var chain = new ArrayList<PlanDocument>();
        var next = require(by, planId);
        while (next != null) {
            chain.add(next.document());
            next = next.follows == null ? null : require(by, next.follows);
        }
        return Settled.of(chain, kept.answers(by, chain));
    }

    /**
     * Computes a plan again from what it was computed with. Refuses with PLAN_INPUT_GONE where that is not kept here. As long as it took the
     * first time.
     */
    public RecomputationView recompute(Standing by, UUID id) {
        Drafts.requireCoordinator(by);
        var plan = require(by, id).document();
        var input = kept.input(by, plan.inputDigest())
                .orElseThrow(() -> new Refusal(
                        PLAN_INPUT_GONE,
                        "What this plan was computed with is not kept on this server; ask the node that issued it."));
        return solving.compute(() -> Recomputation.of(plan, input));
    }
}
