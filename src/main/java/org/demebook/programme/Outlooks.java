package org.demebook.programme;

import static org.demebook.problem.ProblemType.DRAFT_NOT_READY;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.demebook.ancestry.Ancestries;
import org.demebook.keeper.Standing;
import org.demebook.planning.SeasonFields;
import org.demebook.problem.Refusal;
import org.demebook.registry.Populations;

/** What years to come may bring if a plan is followed. Nothing of it is stored; it is computed on what its asker may know now. */
@ApplicationScoped
public class Outlooks {
    @Inject
    Drafts drafts;

    @Inject
    SeasonPlans plans;

    @Inject
    SeasonFields fields;

    @Inject
    Populations populations;

    @Inject
    Solving solving;

    @Inject
    Ancestries ancestries;

    @Inject
    Clock clock;

    /** Refuses with NOT_ALLOWED, NO_SUCH_DRAFT, and with DRAFT_NOT_READY while it has no plan. */
    public OutlookView ofDraft(Standing by, UUID draftId, OutlookQuestion question) {
        var draft = drafts.require(by, draftId);
        var plan = draft.plan();
        if (plan == null) {
            throw new Refusal(
                    DRAFT_NOT_READY,
                    "The draft %s has no plan to look ahead from; it is %s."
                            .formatted(draftId, draft.state().word()));
        }
        int[] founders = {draft.asked.femaleFounders(), draft.asked.maleFounders()};
        return of(
                by,
                question,
                plan,
                draft.stage.lost(),
                founders,
                draft.stage.snapshot().size());
    }

    /** For coordinators; refuses with NO_SUCH_PLAN, and everybody else with NOT_ALLOWED. */
    public OutlookView ofPlan(Standing by, UUID planId, OutlookQuestion question) {
        Drafts.requireCoordinator(by);
        return of(by, question, plans.require(by, planId).document(), Set.of(), new int[2], 0);
    }

    private OutlookView of(
            Standing by,
            OutlookQuestion question,
            PlanDocument plan,
            Set<UUID> lost,
            int[] founders,
            int firstImagined) {
        var today = LocalDate.now(clock);
        var field = fields.of(by, plan.pairOn().isBefore(today) ? today : plan.pairOn());
        var breeding = populations.get(by).profile().breeding();
        var pool = new PoolToday(field, breeding, question, plan, lost, founders, firstImagined);
        var sight = PlanSight.of(ancestries, by, clock.instant());
        var lines = new FoundersAtRisk(pool, sight, plan.work().seed());
        sight.disclosed(ancestries, lines.shown());
        return solving.compute(
                () -> new OutlookReckoning(pool, question, plan.work().seed()).view(lines.chances()));
    }
}
